declare const kind: unique symbol
type Id<K extends string> = string & { readonly [kind]: K }

export type StationId = Id<'station'>
export type LineId = Id<'line'>
export type HazardId = Id<'hazard'>
export type CircuitId = Id<'circuit'>
