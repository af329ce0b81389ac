import { shortWayDeg } from '../geo/longitude'
import type { ElevationGrid } from './elevation-grid'
import { type LonLat, type Patch, samplerOf } from './grid-sampler'
import type { Ground } from './ground'

/** Ground that knows its grids, so that a profile can be drawn of it and a map painted. */
export interface GridGround extends Ground {
  /** Finest first. */
  readonly grids: readonly ElevationGrid[]
  /** Heights at even points of a straight leg, both ends among them, m; NaN where not known. */
  heightsAlongM(from: LonLat, to: LonLat, mapM: number): Float64Array
  /** Heights on an even lattice laid over a patch, row by row, m; NaN where not known. */
  heightsOverM(patch: Patch): Float32Array
}

/** A leg is projected at points this far apart, m, and straight between them: the bend of a meridian over it is under 5 mm. */
const PROJECT_EVERY_M = 500

const hasVoid = (heightsM: Float64Array): boolean => heightsM.some(Number.isNaN)

/**
 * Ground from elevation grids, the finest first: where it is void or ends, the next one answers.
 *
 * A leg lies on one grid if any covers the whole of it, so that no seam between two datums looks like a cliff.
 */
export function groundFromGrids(grids: readonly ElevationGrid[]): GridGround {
  const samplers = grids.map(samplerOf).sort((a, b) => a.cellM - b.cellM)

  const sampleLeg = (from: LonLat, to: LonLat, mapM: number): Float64Array => {
    let merged: Float64Array | undefined
    for (const sampler of samplers) {
      const intervals = Math.max(1, Math.ceil(mapM / sampler.stepM))
      const spans = Math.max(1, Math.ceil(mapM / PROJECT_EVERY_M))
      const heightsM = sampler.heightsAlongM(from, to, intervals, spans)
      if (!hasVoid(heightsM)) return heightsM
      merged ??= heightsM.every(Number.isNaN) ? undefined : heightsM
    }
    if (!merged) return new Float64Array(2).fill(Number.NaN)
    const intervals = merged.length - 1
    return merged.map((heightM, i) => {
      if (!Number.isNaN(heightM)) return heightM
      const t = i / intervals
      return heightAt(from[0] + shortWayDeg(to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t)
    })
  }

  const heightAt = (lonDeg: number, latDeg: number): number => {
    for (const sampler of samplers) {
      const heightM = sampler.heightM(lonDeg, latDeg)
      if (!Number.isNaN(heightM)) return heightM
    }
    return Number.NaN
  }

  return {
    grids: samplers.map((sampler) => sampler.grid),
    hasEightBits: grids.some(({ heights }) => heights.BYTES_PER_ELEMENT === 1),
    heightM: (lonDeg, latDeg) => {
      const heightM = heightAt(lonDeg, latDeg)
      return Number.isNaN(heightM) ? undefined : heightM
    },
    heightsAlongM: sampleLeg,
    heightsOverM: (patch) => {
      const heightsM = new Float32Array(patch.columns * patch.rows).fill(Number.NaN)
      for (const sampler of samplers) if (!sampler.fill(heightsM, patch)) break
      return heightsM
    },
    groundM: (from, to, mapM) => {
      const heightsM = sampleLeg(from, to, mapM)
      const runM = mapM / (heightsM.length - 1)
      // Summed as what the slope adds, so that flat ground is exactly as long as the map.
      let addedM = 0
      for (let i = 1; i < heightsM.length; i++) {
        const riseM = heightsM[i]! - heightsM[i - 1]!
        addedM += Math.sqrt(runM * runM + riseM * riseM) - runM
      }
      return Number.isNaN(addedM) ? undefined : mapM + addedM
    },
  }
}
