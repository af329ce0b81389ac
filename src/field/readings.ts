import type { Conditions } from '../budget/conditions'
import type { Spread } from '../catalog/sources'
import type { Plan } from '../plan/plan'
import type { StandingRecord } from '../plan/standing-records'
import type { Stand, What } from './probe'
import { sigmaOf } from './wire-figures'

export type Reading = Extract<StandingRecord, { readonly kind: 'reading' }>

/** What a reading was expected to be, from the catalog and all other readings. */
export interface Expected {
  readonly value: number
  readonly low: number
  readonly high: number
}

/** What a meter is taken to err where nobody says it, %. Allowance: a pocket meter of the cheaper kind. */
export const USUAL_METER_PCT = 2

/** Standard deviation of the wire's temperature where nobody took it, °C: 95 of a hundred within 5 °C. Allowance. */
export const UNTAKEN_TEMP_C = 5 / 1.96

/** A meter that is said to err by nothing is taken to err by this, nepers. */
const LEAST_SIGMA = 1e-6

const NEPERS_PER_DB = Math.LN10 / 20

/** Below the first, readings no longer tell values apart, nor above the second; in the unit of what is read. */
const RANGE: Readonly<Record<Exclude<What, 'lossDb'>, readonly [number, number]>> = {
  loopOhms: [0.05, 1e8],
  kOhms: [5e-5, 1e5],
  nanoF: [0.02, 1e9],
  ringVolts: [0.01, 1e6],
  mA: [0.01, 1e6],
}

const MOST_DB = 200

/** A reading in nepers, in which its error is the same at every size. */
export function nepersOf(what: What, value: number): number {
  if (what === 'lossDb') return NEPERS_PER_DB * Math.min(MOST_DB, Number.isNaN(value) ? MOST_DB : value)
  const [least, most] = RANGE[what]
  return Math.log(Math.min(most, Math.max(0, value)) + least)
}

/** The reading that so many nepers are: the inverse of {@link nepersOf}. */
export const readingOf = (what: What, nepers: number): number =>
  what === 'lossDb' ? nepers / NEPERS_PER_DB : Math.max(0, Math.exp(nepers) - RANGE[what][0])

/** Standard deviation of what a meter shows, nepers. */
export function meterSigma(what: What, value: number, meterPct = USUAL_METER_PCT): number {
  const sigma = Math.max(LEAST_SIGMA, sigmaOf(meterPct))
  return what === 'lossDb' ? sigma * NEPERS_PER_DB * Math.max(1, Math.abs(value)) : sigma
}

/** In which weather and at what temperature a reading was taken: the plan's own where nobody says it. */
export const conditionsAt = (
  plan: Pick<Plan, 'weather' | 'wireTempC'>,
  { weather = plan.weather, tempC = plan.wireTempC }: Pick<Reading, 'weather' | 'tempC'>,
): Conditions => ({ weather, wireTempC: tempC, lengthFactor: 1, batteryFactor: 1, ringFactor: 1 })

const OF_THE_SET: Readonly<Record<What, readonly string[]>> = {
  loopOhms: ['ringer.ohms'],
  kOhms: ['ringer.ohms'],
  nanoF: ['ringer.microF'],
  ringVolts: ['generator.volts', 'generator.ohms', 'ring.volts'],
  mA: ['volts', 'maxMA'],
  lossDb: ['offHook.acOhms'],
}

/** How far telephone and supply at the far end leave a reading in doubt, standard deviation, nepers. */
export function setSigma({ model, far }: Stand, what: What): number {
  const set: Spread = model.sets.find(({ node }) => node === far)?.set.spread ?? {}
  const supply: Spread = model.supply?.supply.spread ?? {}
  return Math.hypot(0, ...OF_THE_SET[what].map((member) => sigmaOf(set[member] ?? supply[member] ?? 0)))
}
