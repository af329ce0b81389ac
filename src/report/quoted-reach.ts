import type { HowToCall } from '../budget/calling'
import type { CircuitModel } from '../budget/circuit-model'

/** Nets of which people say how far they go. */
export type QuotedNet = 'crank' | 'lift' | 'series'

/**
 * How far people say that such a net goes, m: two crank sets over field wire 4 miles, a ringdown unit 2 to 3, two batteries of 9 V
 * in one leg about 1.
 *
 * Source: common practice.
 */
const QUOTED_M: Readonly<Record<QuotedNet, number>> = { crank: 6400, lift: 4000, series: 1600 }

/** A battery in one leg of which the mile is told: two of 9 V. */
const QUOTED_SERIES_VOLTS = 18

export interface Quoted {
  readonly net: QuotedNet
  readonly quotedM: number
}

/** What people quote for a circuit's way of calling; null where they quote nothing that we know of. */
export function quotedFor({ supply }: CircuitModel, { how }: HowToCall): Quoted | null {
  if (how === 'crank' || how === 'lift') return { net: how, quotedM: QUOTED_M[how] }
  if (supply?.supply.kind === 'series' && supply.supply.volts <= QUOTED_SERIES_VOLTS)
    return { net: 'series', quotedM: QUOTED_M.series }
  return null
}
