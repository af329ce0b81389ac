import { VectorTile, type VectorTileFeature } from '@mapbox/vector-tile'
import { PbfReader } from 'pbf'
import { type Drawn, drawnAs, nameOf, type Shape } from './vector-style'

/** Of a canvas only what is drawn with here. */
export type Brush = Pick<
  OffscreenCanvasRenderingContext2D,
  | 'beginPath'
  | 'moveTo'
  | 'lineTo'
  | 'closePath'
  | 'fill'
  | 'stroke'
  | 'setLineDash'
  | 'fillText'
  | 'strokeText'
  | 'measureText'
  | 'fillStyle'
  | 'strokeStyle'
  | 'lineWidth'
  | 'lineJoin'
  | 'font'
  | 'textAlign'
  | 'textBaseline'
>

/** Which part of a tile is painted, as fractions of its side, and how large. */
export interface Part {
  readonly left: number
  readonly top: number
  readonly side: number
  readonly sizePx: number
  /** Zoom that the picture stands for. */
  readonly zoom: number
}

interface Thing {
  readonly feature: VectorTileFeature
  readonly drawn: Drawn
  readonly name: string
  readonly extent: number
}

const SHAPES: readonly (Shape | undefined)[] = [undefined, 'point', 'line', 'area']
/** A tile with more corners would hold the painter up; no map has them. */
const MOST_CORNERS = 400_000
const LINE_AT_ZOOM = 14
const INK = '#3d3a35'
const PAPER = '#f7f4ec'

/**
 * Paints a vector tile, or a part of it where nearer ones are not kept. Throws where the tile is broken.
 *
 * Source: Mapbox Vector Tile Specification 2.1 (2016), by the packages vector-tile and pbf.
 */
export function paintVectorTile(brush: Brush, bytes: Uint8Array, part: Part): void {
  const things = thingsOf(bytes).sort((a, b) => a.drawn.level - b.drawn.level)
  const widens = 2 ** ((part.zoom - LINE_AT_ZOOM) / 2)
  const scale = part.sizePx / part.side
  brush.lineJoin = 'round'
  let corners = 0
  const written: Box[] = []
  for (const { feature, drawn, name, extent } of things) {
    const at = ({ x, y }: { x: number; y: number }): readonly [number, number] => [
      (x / extent - part.left) * scale,
      (y / extent - part.top) * scale,
    ]
    const rings = feature.loadGeometry()
    corners += rings.reduce((sum, ring) => sum + ring.length, 0)
    if (corners > MOST_CORNERS) return
    if (drawn.letterPx) {
      const place = rings[0]?.[0]
      if (place && name) writeName(brush, name, at(place), drawn.letterPx, part.sizePx, written)
      continue
    }
    brush.beginPath()
    for (const ring of rings) {
      for (const [i, corner] of ring.entries()) {
        const [x, y] = at(corner)
        if (i === 0) brush.moveTo(x, y)
        else brush.lineTo(x, y)
      }
      if (drawn.fill) brush.closePath()
    }
    if (drawn.fill) {
      brush.fillStyle = drawn.fill
      brush.fill('evenodd')
    }
    if (drawn.stroke) {
      brush.strokeStyle = drawn.stroke
      brush.lineWidth = Math.max(0.4, Math.min(12, (drawn.widthPx ?? 1) * widens))
      brush.setLineDash([...(drawn.dash ?? [])])
      brush.stroke()
    }
  }
}

function thingsOf(bytes: Uint8Array): Thing[] {
  const tile = new VectorTile(new PbfReader(bytes))
  const things: Thing[] = []
  for (const [name, layer] of Object.entries(tile.layers)) {
    for (let i = 0; i < layer.length; i++) {
      const feature = layer.feature(i)
      const shape = SHAPES[feature.type]
      const drawn = shape && drawnAs(name, shape, feature.properties)
      if (drawn)
        things.push({
          feature,
          drawn,
          name: drawn.letterPx ? nameOf(feature.properties) : '',
          extent: layer.extent,
        })
    }
  }
  return things
}

type Box = readonly [left: number, top: number, right: number, bottom: number]

/** A name within the tile that lies on no other: one across its edge would be cut. */
function writeName(
  brush: Brush,
  name: string,
  [x, y]: readonly [number, number],
  letterPx: number,
  sizePx: number,
  written: Box[],
): void {
  brush.font = `${letterPx}px system-ui, sans-serif`
  const half = brush.measureText(name).width / 2 + 3
  const box: Box = [x - half, y - letterPx * 0.7, x + half, y + letterPx * 0.7]
  const [left, top, right, bottom] = box
  if (left < 0 || top < 0 || right > sizePx || bottom > sizePx) return
  if (written.some(([l, t, r, b]) => left < r && l < right && top < b && t < bottom)) return
  written.push(box)
  brush.textAlign = 'center'
  brush.textBaseline = 'middle'
  brush.setLineDash([])
  brush.lineWidth = 3
  brush.strokeStyle = PAPER
  brush.strokeText(name, x, y)
  brush.fillStyle = INK
  brush.fillText(name, x, y)
}
