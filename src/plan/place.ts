import type { LineId, StationId } from './id'

type LonLat = readonly [lonDeg: number, latDeg: number]

/** Where a line begins or ends, or a station is put: at a station, on the wire of a line, or on open ground. */
export type Place =
  | { readonly kind: 'station'; readonly id: StationId }
  | { readonly kind: 'wire'; readonly line: LineId; readonly leg: number; readonly position: LonLat }
  | { readonly kind: 'ground'; readonly position: LonLat }
