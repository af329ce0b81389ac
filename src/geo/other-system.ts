import type ofPackage from 'proj4'

/** Between WGS 84 degrees and a system's own x and y. */
interface OtherSystem {
  forward(lonDeg: number, latDeg: number): [x: number, y: number]
  inverse(x: number, y: number): [lonDeg: number, latDeg: number]
}

let proj4: typeof ofPackage | undefined

/** Loads what reckons in other systems. Wanted before a projection of one is made; what was loaded stays. */
export async function loadOtherSystems(): Promise<void> {
  proj4 ??= (await import('proj4')).default
}

/**
 * Between WGS 84 degrees and a system given in the manner of PROJ, such as `+proj=lcc +lat_1=49 … +ellps=GRS80`.
 *
 * By proj4js: Snyder, Map Projections – A Working Manual (USGS PP 1395, 1987), and EPSG Guidance Note 7-2 for the shift between datums.
 * Throws where the text means no system, or before `loadOtherSystems` has ended.
 */
export function otherSystem(definition: string): OtherSystem {
  if (!proj4) throw new Error('other systems are not loaded')
  const system = proj4(definition)
  return {
    forward: (lonDeg, latDeg) => system.forward([lonDeg, latDeg]) as [number, number],
    inverse: (x, y) => system.inverse([x, y]) as [number, number],
  }
}
