import { drawMap, type MapWish } from '../drawing/map-drawing'
import type { MapWindow } from '../drawing/map-window'
import type { Block } from '../layout/block'
import type { Norths, PaperSource } from '../paper-source'

/** A map as blocks: the drawing, and below it what it had no room to name. */
export function mapBlocks(
  source: PaperSource,
  window: MapWindow,
  size: readonly [widthMm: number, heightMm: number],
  norths: Norths,
  id: string,
  wish: MapWish & { readonly hasLegend?: boolean } = {},
): readonly Block[] {
  const drawing = drawMap(source, window, wish)
  return [
    {
      kind: 'drawing',
      heightMm: size[1],
      drawing: { kind: 'map', drawing, norths, size, id, hasLegend: wish.hasLegend ?? true },
    },
    ...(drawing.unplaced.length > 0
      ? [
          {
            kind: 'text',
            isSmall: true,
            text: `Not named on the map for want of room: ${drawing.unplaced.join(', ')}.`,
          } as const,
        ]
      : []),
  ]
}
