import { allowance, type Sources, type Spread } from './sources'
import type { Ringer } from './telephone-set'

const OFF_HOOK: Spread = { 'offHook.acOhms': 25, 'offHook.dcOhms': 25, maxLossDb: 12 }

/** How far telephones of one pattern lie from its printed figures. */
export const setSpread = (
  ringer: Ringer | undefined,
  parts: { readonly crank?: boolean; readonly fed?: boolean } = {},
): Spread => ({
  ...OFF_HOOK,
  ...(parts.fed && { 'offHook.minMA': 20 }),
  ...(ringer && { 'ringer.ohms': 10, 'ringer.minVolts': 30 }),
  ...(ringer?.henries !== undefined && { 'ringer.henries': 30 }),
  ...(ringer?.microF !== undefined && { 'ringer.microF': 15 }),
  ...(parts.crank && { 'generator.volts': 20, 'generator.ohms': 40 }),
})

/** All of it is allowances: no maker or handbook that was read says how much its sets differ. */
export const SET_SPREAD_SOURCES: Sources = {
  spread: allowance('Allowance: no paper that was read says how much sets of one pattern differ.'),
  'spread.ringer.minVolts': allowance(
    'Allowance: bells are set by a screw and a spring, and go stiff. Measure the bell that it hangs on.',
  ),
  'spread.generator.volts': allowance(
    'Allowance: magnets age and arms tire; 50 to 100 V are quoted for hand generators of all sizes.',
  ),
}
