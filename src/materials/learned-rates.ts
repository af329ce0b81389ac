import type { LayingAllowances } from '../catalog/laying-rates'
import { laidSpells, type Spell } from '../field/laying-spells'
import type { MeasuredLine } from '../measure/measured'
import { remembering } from '../memo'
import type { LineId } from '../plan/id'
import type { Plan } from '../plan/plan'
import { type LearnedRate, type LineHours, rateKmPerHour } from './hours'

/** Of a hundred crews 95 go between half and twice the planned rate, as a standard deviation of the logarithm. Allowance. */
const CREWS = Math.log(2) / 1.96
/** An hour's work of one crew takes between 1/1.6 and 1.6 times what it takes on the whole, the same way. Allowance. */
const HOUR = Math.log(1.6) / 1.96

/**
 * Rates as this crew's records have them, drawn towards the planned ones as long as little is known: rate × exp(−w ln(taken/expected)) with
 * w = σ²/(σ² + s²/h), for h hours of it.
 *
 * Both logarithms are taken for normal. What is expected has the line's share of climbing, crossings and splices, and night, in it, so that
 * only the laying itself is learned.
 *
 * Source: a normal mean with a normal prior, A. Gelman et al., Bayesian Data Analysis (3rd ed. 2013), 2.5 (from memory).
 */
export function learnedRates(
  plan: Plan,
  measured: ReadonlyMap<LineId, MeasuredLine>,
  expected: readonly LineHours[],
  allowances: LayingAllowances,
): readonly LearnedRate[] {
  const sums = new Map<Spell['what'], { groundM: number; hours: number; expectedH: number }>()
  const byLine = new Map(expected.map((each) => [each.line, each]))
  for (const spell of laidSpells(plan, measured)) {
    const { line, what, groundM, hours } = spell
    const sum = sums.get(what) ?? { groundM: 0, hours: 0, expectedH: 0 }
    sum.groundM += groundM
    sum.hours += hours
    sum.expectedH += expectedH(spell, plan, measured.get(line)!.groundM, byLine.get(line)!, allowances)
    sums.set(what, sum)
  }
  return [...sums].map(([what, { groundM, hours, expectedH }]) => {
    const weight = CREWS ** 2 / (CREWS ** 2 + HOUR ** 2 / hours)
    const planned = what === 'recovery' ? allowances.recoveryKmPerHour : allowances.rates[what].kmPerHour
    return {
      ...{ what, groundM, hours, plannedKmPerHour: planned },
      kmPerHour: planned * Math.exp(-weight * Math.log(hours / expectedH)),
    }
  })
}

function expectedH(
  { what, groundM }: Spell,
  plan: Plan,
  lineM: number,
  { line, climbingH, crossingsH, splicesH }: LineHours,
  allowances: LayingAllowances,
): number {
  const stretch = allowances.isNight ? allowances.nightFactor : 1
  const share = lineM > 0 ? Math.min(1, groundM / lineM) : 0
  const { pairs } = plan.lines.get(line)!
  const km = (pairs * groundM) / 1000
  return what === 'recovery'
    ? stretch * (km / allowances.recoveryKmPerHour + share * climbingH)
    : stretch * (km / rateKmPerHour(what, allowances) + share * (climbingH + crossingsH + splicesH))
}

/** The allowances with the rates that were learned: the same object for the same. */
export const withLearnedRates = remembering(
  (allowances: LayingAllowances, ...rates: readonly (Spell['what'] | number)[]): LayingAllowances => {
    let { rates: of, recoveryKmPerHour } = allowances
    for (let k = 0; k < rates.length; k += 2) {
      const [what, kmPerHour] = [rates[k] as Spell['what'], rates[k + 1] as number]
      if (what === 'recovery') recoveryKmPerHour = kmPerHour
      else of = { ...of, [what]: { ...of[what], kmPerHour } }
    }
    return { ...allowances, rates: of, recoveryKmPerHour }
  },
)
