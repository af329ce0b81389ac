import { SUGGESTED_SOURCES, type TileSource } from './online-tiles'

/** Servers whose terms forbid to fetch tiles ahead. Source: Tile Usage Policy of the OpenStreetMap Foundation, "Bulk downloading". */
const FORBIDDING = /(^|\.)(openstreetmap\.org|osm\.org)$/i

const hostOf = (url: string): string => {
  try {
    return new URL(url.replaceAll(/[{}]/g, '')).hostname
  } catch {
    return ''
  }
}

/** Whether a server's tiles may never be kept here, whatever a person says of its terms: those that the program itself suggests, and those known to forbid it. */
export const forbidsKeeping = (url: string): boolean => {
  const host = hostOf(url)
  return FORBIDDING.test(host) || Object.values(SUGGESTED_SOURCES).some((each) => hostOf(each.url) === host)
}

/** Whether the person has said that the terms of a source let its tiles be kept, and nothing is known against it. */
export const mayKeep = (source: TileSource): boolean => source.mayKeep === true && !forbidsKeeping(source.url)
