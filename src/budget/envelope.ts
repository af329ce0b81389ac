import type { Supply } from '../catalog/supply'
import type { Weather } from '../plan/plan'
import type { CircuitModel } from './circuit-model'
import { circuitRows } from './circuit-rows'
import { type Conditions, conditionsOf } from './conditions'
import type { CircuitRows, Verdict } from './rows'
import { leastMargin, type Margin, RANK, verdictOf } from './verdict'

/** The weather and the wear that every circuit is judged over, beside the plan's own conditions. Allowances, but for the sourced ones. */
export const ENVELOPE = {
  /** Wire in the shade of a hard frost; common practice. */
  coldestWireC: -20,
  /** Dark wire on sunlit ground: the 120 °F at which NESC rule 232 has sag reckoned is 49 °C. */
  hottestWireC: 50,
  /** A dry cell of 1.5 V is spent at 0.9 V: IEC 60086-2 end point for telephone and similar drains (from memory). */
  spentCell: 0.9 / 1.5,
  /** A 48 V plant on its batteries falls to 42.5 V: network practice (from memory). */
  weakFeed: 42.5 / 48,
  /** Ring sources and cranks at their low end: gateways state ± 10 %; a tired arm turns slower still (common practice). */
  weakRing: 0.9,
} as const

/** DC volts that a supply still gives at the end of its battery's life, as a part of its nominal volts. */
export const weakBatteryFactor = (supply: Supply): number =>
  supply.endVolts !== undefined
    ? Math.min(1, supply.endVolts / supply.volts)
    : supply.ampHours !== undefined
      ? ENVELOPE.spentCell
      : ENVELOPE.weakFeed

export interface WorstCorner {
  readonly conditions: Conditions
  readonly rows: CircuitRows
  readonly verdict: Verdict
  readonly least: Margin | null
}

/**
 * The corner of the envelope in which a circuit has least to spare: dry or wet, coldest or hottest wire, battery and bells at
 * their low end, and the plan's own conditions, so that the worst is never better than today.
 *
 * @param todaysRows the circuit's rows today, where they are known
 */
export function worstCorner(
  model: CircuitModel,
  today: Conditions,
  missing: readonly unknown[],
  todaysRows: CircuitRows = circuitRows(model, today),
): WorstCorner {
  const battery = model.supply ? weakBatteryFactor(model.supply.supply) : 1
  const temperatures = [
    Math.min(ENVELOPE.coldestWireC, today.wireTempC),
    Math.max(ENVELOPE.hottestWireC, today.wireTempC),
  ]
  const weathers: readonly Weather[] = ['dry', 'wet']
  const corners = weathers.flatMap((weather) =>
    temperatures.map((wireTempC) => ({
      ...conditionsOf(weather, wireTempC),
      batteryFactor: battery,
      ringFactor: ENVELOPE.weakRing,
    })),
  )
  let worst: WorstCorner | undefined
  for (const conditions of [today, ...corners]) {
    const rows = conditions === today ? todaysRows : circuitRows(model, conditions)
    const corner = { conditions, rows, verdict: verdictOf(rows, missing), least: leastMargin(rows) }
    if (!worst || lessToSpare(corner, worst)) worst = corner
  }
  return worst!
}

const lessToSpare = (a: WorstCorner, b: WorstCorner): boolean =>
  RANK[a.verdict] !== RANK[b.verdict]
    ? RANK[a.verdict] < RANK[b.verdict]
    : (a.least?.nepers ?? Number.POSITIVE_INFINITY) <= (b.least?.nepers ?? Number.POSITIVE_INFINITY)
