import type { DatumShift } from '../../geo/datum-shift'
import type { Extent } from '../../terrain/elevation-grid'
import type { RasterWindow } from '../raster-window'
import type { TilePlace } from './map-archive'

/** Cells of a picture, four bytes each: red, green, blue, and how much it covers. */
export interface Rgba {
  readonly data: Uint8ClampedArray<ArrayBuffer>
  readonly columns: number
  readonly rows: number
}

/** A picture of the ground: where it lies, and its cells a window at a time. */
export interface Picture {
  readonly columns: number
  readonly rows: number
  readonly extent: Extent
  /** Where it lies in another datum. */
  readonly shift?: DatumShift | undefined
  /** Where a place of Mercator's map lies on it, m to px from its upper left corner. */
  readonly at: (eastM: number, northM: number) => readonly [x: number, y: number]
  /** A window of it, brought to so many columns and rows. */
  readonly read: (window: RasterWindow, columns: number, rows: number) => Promise<Rgba>
}

/** Half the way round the equator, m: where Mercator's map of the world ends. Source: EPSG Guidance Note 7-2, method 1024. */
const WORLD_M = Math.PI * 6378137
/** A tile is projected at so many points a side, and straight between them: off by less than a pixel. */
const NODES = 16
/** A tile that needs more cells of the picture is left empty: nearer ones need fewer. */
const MOST_CELLS = 12e6

/**
 * A tile of the map of the whole world, painted from a picture: each of its pixels is mixed from the four cells around its place, after the
 * window that it needs has been brought to about its own size. Undefined where they do not meet.
 */
export async function tileOfPicture(
  picture: Picture,
  { zoom, column, row }: TilePlace,
  sizePx: number,
): Promise<Rgba | undefined> {
  const sideM = (2 * WORLD_M) / 2 ** zoom
  const side = NODES + 1
  const xs = new Float64Array(side * side)
  const ys = new Float64Array(side * side)
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity]
  for (let k = 0; k < side * side; k++) {
    const eastM = -WORLD_M + (column + (k % side) / NODES) * sideM
    const northM = WORLD_M - (row + Math.floor(k / side) / NODES) * sideM
    const [x, y] = picture.at(eastM, northM)
    if (!Number.isFinite(x + y)) return undefined
    xs[k] = x
    ys[k] = y
    left = Math.min(left, x)
    right = Math.max(right, x)
    top = Math.min(top, y)
    bottom = Math.max(bottom, y)
  }
  const window = {
    left: Math.max(0, Math.floor(left) - 1),
    top: Math.max(0, Math.floor(top) - 1),
    right: Math.min(picture.columns, Math.ceil(right) + 1),
    bottom: Math.min(picture.rows, Math.ceil(bottom) + 1),
  }
  const [across, down] = [window.right - window.left, window.bottom - window.top]
  if (!(across > 0 && down > 0) || across * down > MOST_CELLS) return undefined
  const shrink = Math.max(1, Math.max(right - left, bottom - top) / sizePx)
  const columns = Math.max(1, Math.round(across / shrink))
  const rows = Math.max(1, Math.round(down / shrink))
  const cells = await picture.read(window, columns, rows)
  const toColumn = (x: number) => ((x - window.left) * columns) / across - 0.5
  const toRow = (y: number) => ((y - window.top) * rows) / down - 0.5
  return warped(cells, xs.map(toColumn), ys.map(toRow), sizePx)
}

/** Pixels from cells, by where the nodes of a lattice over the tile lie among them. */
function warped(cells: Rgba, xs: Float64Array, ys: Float64Array, sizePx: number): Rgba {
  const out = new Uint8ClampedArray(sizePx * sizePx * 4)
  const side = NODES + 1
  const mix = (of: Float64Array, k: number, across: number, down: number) => {
    const upper = of[k]! + (of[k + 1]! - of[k]!) * across
    const lower = of[k + side]! + (of[k + side + 1]! - of[k + side]!) * across
    return upper + (lower - upper) * down
  }
  for (let row = 0; row < sizePx; row++) {
    const v = ((row + 0.5) / sizePx) * NODES
    const j = Math.floor(v)
    for (let column = 0; column < sizePx; column++) {
      const u = ((column + 0.5) / sizePx) * NODES
      const i = Math.floor(u)
      const k = j * side + i
      blend(cells, mix(xs, k, u - i, v - j), mix(ys, k, u - i, v - j), out, (row * sizePx + column) * 4)
    }
  }
  return { data: out, columns: sizePx, rows: sizePx }
}

/** Mixes the four cells around a place; beyond the outer half of an edge cell there is nothing. */
function blend(
  { data, columns, rows }: Rgba,
  x: number,
  y: number,
  out: Uint8ClampedArray,
  to: number,
): void {
  if (!(x >= -0.5 && y >= -0.5 && x <= columns - 0.5 && y <= rows - 0.5)) return
  const c = Math.min(Math.max(x, 0), columns - 1)
  const r = Math.min(Math.max(y, 0), rows - 1)
  const [left, upper] = [Math.floor(c), Math.floor(r)]
  const [right, lower] = [Math.min(left + 1, columns - 1), Math.min(upper + 1, rows - 1)]
  const [u, v] = [c - left, r - upper]
  const a = (upper * columns + left) * 4
  const b = (upper * columns + right) * 4
  const d = (lower * columns + left) * 4
  const e = (lower * columns + right) * 4
  for (let i = 0; i < 4; i++)
    out[to + i] =
      (data[a + i]! * (1 - u) + data[b + i]! * u) * (1 - v) + (data[d + i]! * (1 - u) + data[e + i]! * u) * v
}
