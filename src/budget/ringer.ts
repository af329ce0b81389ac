import type { Ringer, TelephoneSet } from '../catalog/telephone-set'
import { abs, type Complex, complex, divide, ONE, ZERO } from './complex'

/** Impedance of a ringer's series R–L–C at a frequency above 0, Ω. */
export function ringerOhm(ringer: Ringer, hz: number): Complex {
  const omega = 2 * Math.PI * hz
  const inductive = omega * (ringer.henries ?? 0)
  const capacitive = ringer.microF ? 1 / (omega * ringer.microF * 1e-6) : 0
  return complex(ringer.ohms, inductive - capacitive)
}

/** What an on-hook set lays across the pair, S. At 0 Hz a capacitor blocks; without one the coil conducts. */
export function onHookSiemens(set: TelephoneSet, hz: number): Complex {
  if (!set.ringer) return ZERO
  if (hz === 0) return set.ringer.microF || set.ringer.ohms === 0 ? ZERO : complex(1 / set.ringer.ohms)
  return divide(ONE, ringerOhm(set.ringer, hz))
}

/** The ringer that counts as one: 7000 Ω at 20 Hz. Source: TIA-968-A table 6, 47 CFR 68.312 (1997): 5 × 1400 Ω. */
export const OHM_PER_RINGER_EQUIVALENT = 7000

/** How many ringer equivalents a ringer loads a ring source with. */
export const ringerEquivalents = (ringer: Ringer, hz: number): number =>
  OHM_PER_RINGER_EQUIVALENT / abs(ringerOhm(ringer, hz))
