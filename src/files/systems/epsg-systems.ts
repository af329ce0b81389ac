/**
 * How a coordinate system is defined, in the manner of PROJ, by its EPSG code; undefined where the table does not have it.
 *
 * Source: EPSG Geodetic Parameter Dataset 10.076 of IOGP, as PROJ 9.1.1 keeps it (scripts/make-systems.mjs). Between datums the table has
 * one shift for all of where a system is used, as good as the dataset says, mostly 1…5 m; grids of shifts would weigh megabytes.
 */
export async function systemOfCode(code: number): Promise<string | undefined> {
  const { default: table } = await import('./epsg-systems.txt?raw')
  return new RegExp(`^${code} (.*)$`, 'm').exec(table)?.[1]
}
