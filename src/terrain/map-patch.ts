import { degreeM } from '../geo/earth'
import { degToRad, radToDeg } from '../units'
import type { Extent } from './elevation-grid'
import type { Patch } from './grid-sampler'

const mercator = (latDeg: number) => Math.asinh(Math.tan(degToRad(latDeg)))

/** A patch that lies even on a web-mercator map: what is painted of it needs no bending. */
export function mapPatch(extent: Extent, columns: number, rows: number): Patch {
  const north = mercator(extent.northDeg)
  const south = mercator(extent.southDeg)
  return {
    columns,
    rows,
    at: (across, down) => [
      extent.westDeg + (extent.eastDeg - extent.westDeg) * across,
      radToDeg(Math.atan(Math.sinh(north + (south - north) * down))),
    ],
  }
}

/** Distance between neighbouring points of a patch at its middle, m, across and down. */
export function patchStepM({ columns, rows, at }: Patch): {
  readonly acrossM: number
  readonly downM: number
} {
  const [west, midDeg] = at(0, 0.5)
  const [, northDeg] = at(0.5, 0)
  const [, southDeg] = at(0.5, 1)
  const { lonM, latM } = degreeM(midDeg)
  return {
    acrossM: ((at(1, 0.5)[0] - west) * lonM) / Math.max(1, columns - 1),
    downM: ((northDeg - southDeg) * latM) / Math.max(1, rows - 1),
  }
}
