import type { Ringer } from './telephone-set'

/**
 * A bell of so many ringer equivalents: one is 6930 Ω and 8 µF in series, 7000 Ω at 20 Hz; n of them draw n times the current.
 *
 * Source: 47 CFR 68.312 and TIA-968, ringer equivalence of type A; the network of 6930 Ω and 8 µF is the older definition.
 */
export const ringerOfEquivalents = (equivalents: number, minVolts: number): Ringer => ({
  ohms: 6930 / equivalents,
  microF: 8 * equivalents,
  minVolts,
})
