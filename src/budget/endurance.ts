import { ampHoursAt, CELLS } from '../catalog/cells'
import type { CircuitModel } from './circuit-model'
import type { Conditions } from './conditions'
import { dcCall } from './dc-call'
import { supplyPorts } from './supply-ports'
import { terminalsOf } from './terminals'

/** How long the battery of a circuit lasts. */
export interface Endurance {
  /** Drain while the call that draws most is on, and while every set is on hook, mA. */
  readonly talkMA: number
  readonly idleMA: number
  /** What the battery gives at the talking drain and this temperature, Ah. */
  readonly ampHours: number
  /** Days of service; infinite where nothing is drawn. */
  readonly days: number
  /** Where the capacity comes from. */
  readonly source: string
}

/** Drain of a circuit's battery, mA: the heaviest call, and all sets on hook. */
function drainsMA(model: CircuitModel, conditions: Conditions): { talkMA: number; idleMA: number } {
  const ports = supplyPorts(model)
  const sides = ports.length > 0 ? ports.map(({ circuit }) => circuit) : [model]
  const series = model.supply!.supply.kind === 'series'
  const each = sides.map((side) => {
    const seen = terminalsOf(side, conditions, 0)
    const amps = (sets: readonly number[]) => dcCall(side, conditions, seen, sets).amps * 1000
    const indices = [...side.sets.keys()]
    // Across a ringdown unit a call lifts one set on each side; elsewhere two on the same pair.
    const calls =
      ports.length > 0
        ? indices.map((index) => [index])
        : indices.flatMap((a) => indices.slice(a + 1).map((b) => [a, b]))
    const carried = calls.filter(
      (call) => !series || call.some((k) => side.sets[k]!.node === side.supply!.node),
    )
    return {
      talkMA: carried.reduce((most, call) => Math.max(most, amps(call)), 0),
      idleMA: series ? 0 : amps([]),
    }
  })
  const talk = each.map(({ talkMA }) => talkMA).sort((a, b) => b - a)
  return {
    talkMA: talk.slice(0, ports.length > 0 ? 2 : 1).reduce((sum, mA) => sum + mA, 0),
    idleMA: each.reduce((sum, { idleMA }) => sum + idleMA, 0),
  }
}

/**
 * Days that the battery of a circuit serves: capacity ÷ (talking drain × hours a day + idle drain × the rest of the day).
 *
 * The capacity is that of the battery's cell at the talking drain and at the temperature, where the cell is known, else the supply's
 * stated ampere-hours. Undefined where the supply is no battery.
 *
 * @param talkMinutesPerDay how long the circuit talks in a day, min
 * @param tempC temperature of the battery, °C
 */
export function enduranceOf(
  model: CircuitModel,
  conditions: Conditions,
  talkMinutesPerDay: number,
  tempC: number,
): Endurance | undefined {
  const supply = model.supply?.supply
  if (!supply || supply.ampHours === undefined) return undefined
  const { talkMA, idleMA } = drainsMA(model, conditions)
  const cell = CELLS.find(({ id }) => id === supply.cell)
  const ampHours = cell && talkMA > 0 ? ampHoursAt(cell, talkMA, tempC) : supply.ampHours
  const talkHours = talkMinutesPerDay / 60
  const perDayMAh = talkMA * talkHours + idleMA * (24 - talkHours)
  return {
    talkMA,
    idleMA,
    ampHours,
    days: perDayMAh > 0 ? (ampHours * 1000) / perDayMAh : Number.POSITIVE_INFINITY,
    source: cell
      ? `${cell.sources.capacity.says} In the cold: ${cell.sources.coldFactor.says}`
      : supply.source,
  }
}
