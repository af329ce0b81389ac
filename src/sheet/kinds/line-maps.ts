import { type Plane, planeAbout } from '../../geo/plane'
import type { Position } from '../../geo/position'
import { type Line, verticesOf } from '../../plan/plan'
import { frameIn } from '../drawing/map-frame'
import { LEAST_STRIP_MM, matchAcross, windowOver, windowsAlong } from '../drawing/map-window'
import type { Block } from '../layout/block'
import type { SheetRoom } from '../layout/paper-size'
import { lineNumber } from '../line-marks'
import type { Norths, PaperSource } from '../paper-source'
import { mapBlocks } from './map-block'

/** A line that fits one map at this scale or a larger one has but one; a longer one goes on over several, at the scale below it. */
const LEAST_SCALE = 50_000
const STRIP_SCALE = 25_000
/** The least height of a map's frame, and the most of all of it, mm. */
const LEAST_FRAME_MM = 25
const MOST_MM = 175
/** Ground kept free about the line on its one map, mm. */
const EDGE_MM = 7
/** On one that is half as wide as a sheet. */
const LESS_EDGE_MM = 5
/** Room that a strip's heading takes, and what is kept for a line of names below it, mm. */
const STRIP_WORDS_MM = 22

/** What the legend and a frame's own margin take of a map's height, mm. */
const ABOUT_FRAME_MM = frameIn(0, 0).top - frameIn(0, 0).bottom

/** Strips over a long line: two low ones on a sheet, or one tall one, whichever takes fewer sheets. */
function longStrips(plane: Plane, way: readonly Position[], room: SheetRoom, aboveMm: number) {
  const leastMm = LEAST_STRIP_MM + ABOUT_FRAME_MM
  const strips = (heightMm: number) => {
    const size = [room.widthMm, heightMm] as const
    return { size, ...windowsAlong(plane, way, frameIn(...size), STRIP_SCALE) }
  }
  // Under a head of very long names even one strip may be left too little: it then runs over, and the line is seen.
  const tall = strips(Math.max(leastMm, room.heightMm - STRIP_WORDS_MM - aboveMm))
  const lowMm = room.heightMm / 2 - STRIP_WORDS_MM
  if (lowMm < leastMm) return tall
  const low = strips(lowMm)
  return tall.windows.length < Math.ceil(low.windows.length / 2) ? tall : low
}

/** A line with what its maps are drawn from. */
export interface Mapped {
  readonly source: PaperSource
  readonly line: Line
  readonly norths: Norths
  readonly room: SheetRoom
}

const planeOf = ({ source, line }: Mapped) => planeAbout(verticesOf(source.plan, line))
const idOf = ({ source, line }: Mapped) => `line-${lineNumber(source, line.id)}`

/** The whole line on one map of this size, mm: its scale, and the drawing of it; undefined where it would be too small to walk by. */
export function oneMap(
  mapped: Mapped,
  widthMm: number,
  heightMm: number,
  hasLegend = true,
): { readonly scale: number; readonly draw: () => readonly Block[] } | undefined {
  const { source, line, norths } = mapped
  const size = [widthMm, Math.min(MOST_MM, heightMm)] as const
  const frame = frameIn(...size, hasLegend)
  if (frame.bottom - frame.top < LEAST_FRAME_MM) return undefined
  const window = windowOver(
    planeOf(mapped),
    verticesOf(source.plan, line),
    frame,
    hasLegend ? EDGE_MM : LESS_EDGE_MM,
  )
  if (window.scale > LEAST_SCALE) return undefined
  return {
    scale: window.scale,
    draw: () => mapBlocks(source, window, size, norths, idOf(mapped), { subject: line.id, hasLegend }),
  }
}

/** The line over as many maps as it takes; above the first one so much stands. */
export function stripMaps(mapped: Mapped, aboveMm: number): readonly Block[] {
  const { source, line, norths, room } = mapped
  const strips = longStrips(planeOf(mapped), verticesOf(source.plan, line), room, aboveMm)
  return strips.windows.flatMap((window, i, { length }) => {
    const before = strips.cuts[i - 1]
    const after = strips.cuts[i]
    const matches = [
      ...(before ? [matchAcross(window, before, `from strip ${i}`)] : []),
      ...(after ? [matchAcross(window, after, `to strip ${i + 2}`)] : []),
    ]
    return [
      ...(length > 1 ? [{ kind: 'heading', text: `Strip ${i + 1} of ${length}` } as const] : []),
      ...mapBlocks(source, window, strips.size, norths, `${idOf(mapped)}-${i}`, {
        subject: line.id,
        matches,
      }),
    ]
  })
}
