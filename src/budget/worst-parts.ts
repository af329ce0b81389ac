import type { CircuitModel } from './circuit-model'
import { circuitRows } from './circuit-rows'
import type { Conditions } from './conditions'
import { ENVELOPE, weakBatteryFactor } from './envelope'
import { type ReachResult, reachOf } from './reach'
import type { Check, Verdict } from './rows'
import { leastMargin, RANK, verdictOf } from './verdict'

/** What the worst weather is made of. */
export type WorstPart = 'wet' | 'dry' | 'hot' | 'cold' | 'battery' | 'ringing'

/** How a circuit stands with one of them alone, everything else as today. */
export interface PartAlone {
  readonly part: WorstPart
  /** Of the wire, °C. */
  readonly wireTempC: number
  readonly verdict: Verdict
  /** The check with least to spare. */
  readonly check: Check | null
  readonly reach: ReachResult
}

const withPart: Readonly<Record<WorstPart, (to: Conditions, from: Conditions) => Conditions>> = {
  wet: (to) => ({ ...to, weather: 'wet' }),
  dry: (to) => ({ ...to, weather: 'dry' }),
  hot: (to, { wireTempC }) => ({ ...to, wireTempC }),
  cold: (to, { wireTempC }) => ({ ...to, wireTempC }),
  battery: (to, { batteryFactor }) => ({ ...to, batteryFactor }),
  ringing: (to, { ringFactor }) => ({ ...to, ringFactor }),
}

/** In what some conditions differ from today's. */
function partsOf(today: Conditions, worst: Conditions): readonly WorstPart[] {
  return [
    ...(worst.weather !== today.weather ? [worst.weather] : []),
    ...(worst.wireTempC > today.wireTempC ? (['hot'] as const) : []),
    ...(worst.wireTempC < today.wireTempC ? (['cold'] as const) : []),
    ...(worst.batteryFactor < today.batteryFactor ? (['battery'] as const) : []),
    ...(worst.ringFactor < today.ringFactor ? (['ringing'] as const) : []),
  ]
}

/** Each part of the worst weather by itself: how the circuit then stands, and how far it would reach. */
export function partsAlone(model: CircuitModel, today: Conditions, missing: readonly unknown[]): PartAlone[] {
  const extremes = {
    ...today,
    batteryFactor: model.supply ? weakBatteryFactor(model.supply.supply) : 1,
    ringFactor: ENVELOPE.weakRing,
  }
  const rung = model.sets.some(({ set }) => set.generator) || Boolean(model.supply?.supply.ring)
  const alone: readonly (readonly [WorstPart, Conditions])[] = [
    [today.weather === 'dry' ? 'wet' : 'dry', extremes],
    ['hot', { ...extremes, wireTempC: Math.max(ENVELOPE.hottestWireC, today.wireTempC) }],
    ['cold', { ...extremes, wireTempC: Math.min(ENVELOPE.coldestWireC, today.wireTempC) }],
    ...(model.supply ? ([['battery', extremes]] as const) : []),
    ...(rung ? ([['ringing', extremes]] as const) : []),
  ]
  return alone.map(([part, from]) => {
    const conditions = withPart[part](today, from)
    const rows = circuitRows(model, conditions)
    return {
      part,
      wireTempC: conditions.wireTempC,
      verdict: verdictOf(rows, missing),
      check: leastMargin(rows)?.check ?? null,
      reach: reachOf(model, conditions, rows),
    }
  })
}

/** How a circuit stands in the worst weather, the parts without any of which it would stand better, and the check with least to spare under them. */
export interface WorstBecause {
  readonly verdict: Exclude<Verdict, 'works'>
  readonly parts: readonly WorstPart[]
  readonly check: Check | null
}

/** Why a circuit fails in the worst weather, or is thin; null where it works there too. */
export function worstBecause(model: CircuitModel, today: Conditions, worst: Conditions): WorstBecause | null {
  const under = (parts: readonly WorstPart[]) => {
    const rows = circuitRows(
      model,
      parts.reduce((to, part) => withPart[part](to, worst), today),
    )
    return { verdict: verdictOf(rows, []), check: leastMargin(rows)?.check ?? null }
  }
  let parts = partsOf(today, worst)
  const { verdict } = under(parts)
  if (verdict === 'works') return null
  for (const part of parts.toReversed()) {
    const fewer = parts.filter((each) => each !== part)
    if (RANK[under(fewer).verdict] <= RANK[verdict]) parts = fewer
  }
  return { verdict, parts, check: under(parts).check }
}
