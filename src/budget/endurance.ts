import { ampHoursAt, type Cell, partUsedAt } from '../catalog/cell'
import { CELLS } from '../catalog/cells'
import type { Supply } from '../catalog/supply'
import type { TelephoneSet } from '../catalog/telephone-set'
import type { CircuitModel } from './circuit-model'
import type { Conditions } from './conditions'
import { callsFrom } from './dc-call'
import { weakBatteryFactor } from './envelope'
import type { Check } from './rows'
import { supplyPorts } from './supply-ports'
import { terminalsOf } from './terminals'
import { leastUnder } from './verdict'

/** How long a circuit is used in a day, and how warm its batteries are. */
export interface Use {
  readonly talkMinutesPerDay: number
  readonly ringMinutesPerDay: number
  /** Temperature of the batteries, °C. */
  readonly tempC: number
}

/** What ends a battery's service. */
export type End =
  | { readonly code: 'check'; readonly check: Check }
  | { readonly code: 'spent' }
  /** Nothing is drawn from it. */
  | { readonly code: 'keeps' }
  /** A figure is missing: what the unit takes, what feeds it, what is in the set. */
  | { readonly code: 'unknown'; readonly lacks: 'power' | 'feed' | 'cells' }

/** How long one battery of a circuit lasts. */
export interface EnduranceRow {
  /** Station of the set that the battery is in; null for the supply's. */
  readonly set: string | null
  /** Days of service; null where nothing ends it, or a figure is missing. */
  readonly days: number | null
  readonly until: End
  /** Volts of the battery at that end; null where they are not known. */
  readonly atVolts: number | null
  /** Drain of talking and of waiting, mA, and what the battery gives at the first, Ah; null where not known. */
  readonly drain: { readonly talkMA: number; readonly idleMA: number; readonly ampHours: number } | null
}

/**
 * Days that every battery of a circuit serves, until a check of the circuit fails or the battery is spent, whichever comes first.
 *
 * Days = what it gives until then ÷ (talking drain × hours of talk + idle drain × the other hours). What it gives: its ampere-hours at
 * the talking drain and temperature where its cell is known, else as stated; of that the part used when its volts have fallen so far,
 * by the cell's own discharge curve, else in proportion between its nominal and its last volts (an allowance). Drains are those of the
 * fresh battery, which is a little on the safe side. A unit that takes watts of its own is reckoned by them.
 */
export function enduranceRows(model: CircuitModel, conditions: Conditions, use: Use): EnduranceRow[] {
  return [
    ...supplyEndurance(model, conditions, use),
    ...model.sets.flatMap(({ node, set }) =>
      set.talk === 'local' ? [setRow(model.stations[node]!, set, use)] : [],
    ),
  ]
}

/** The same of the supply's battery alone: one row, or none where nothing is to be told. */
export function supplyEndurance(
  model: CircuitModel,
  conditions: Conditions,
  use: Use,
): readonly EnduranceRow[] {
  const supply = model.supply?.supply
  return supply ? supplyRow(model, supply, conditions, use) : []
}

const cellOf = (id: string | undefined): Cell | undefined => CELLS.find((cell) => cell.id === id)

/** Stated ampere-hours as they are at a drain and a temperature: in the proportion of the cell, where it is known. */
function ampHours(stated: number, cell: Cell | undefined, drainMA: number, tempC: number): number {
  return cell && drainMA > 0 ? (stated * ampHoursAt(cell, drainMA, tempC)) / cell.ampHours : stated
}

const unknown = (set: string | null, lacks: 'power' | 'feed' | 'cells'): EnduranceRow => ({
  set,
  days: null,
  until: { code: 'unknown', lacks },
  atVolts: null,
  drain: null,
})

function supplyRow(
  model: CircuitModel,
  supply: Supply,
  conditions: Conditions,
  use: Use,
): readonly EnduranceRow[] {
  if (supply.powerW) return [unitRow(model, supply, supply.powerW, conditions, use)]
  if (supply.kind === 'ringdown' || supply.kind === 'exchange') return [unknown(null, 'power')]
  // A board that says nothing of power is worked by hand throughout.
  if (supply.kind === 'board') return []
  if (supply.ampHours === undefined) return []
  const { talkMA, idleMA } = drainsMA(model, conditions)
  const cell = cellOf(supply.cell)
  const given = ampHours(supply.ampHours, cell, talkMA, use.tempC)
  const end = endOf(model, supply, conditions, cell)
  const talkHours = use.talkMinutesPerDay / 60
  const perDayMAh = talkMA * talkHours + idleMA * (24 - talkHours)
  const drain = { talkMA, idleMA, ampHours: given }
  return [lasting(null, end, given * end.part * 1000, perDayMAh, drain)]
}

function lasting(
  set: string | null,
  { until, atVolts }: Pick<EnduranceRow, 'until' | 'atVolts'>,
  given: number,
  perDay: number,
  drain: EnduranceRow['drain'],
): EnduranceRow {
  if (given > 0 && !(perDay > 0)) return { set, days: null, until: { code: 'keeps' }, atVolts: null, drain }
  return { set, days: given > 0 ? given / perDay : 0, until, atVolts, drain }
}

/** A unit with watts of its own, on the battery behind it; through a converter its volts on the line stay as they are. */
function unitRow(
  model: CircuitModel,
  supply: Supply,
  { idle, talk, ring }: NonNullable<Supply['powerW']>,
  conditions: Conditions,
  use: Use,
): EnduranceRow {
  const own =
    supply.ampHours === undefined ? undefined : { ...supply, ampHours: supply.ampHours, efficiencyPct: 100 }
  const battery = supply.fedBy ?? own
  if (!battery || battery.volts === 0) return unknown(null, 'feed')
  const cell = cellOf(battery.cell)
  const perVolt = 1 / (battery.volts * (battery.efficiencyPct / 100))
  const [talkMA, idleMA] = [talk * perVolt * 1000, idle * perVolt * 1000]
  const given = ampHours(battery.ampHours, cell, talkMA, use.tempC)
  const spent = { part: 1, until: { code: 'spent' } as const, atVolts: endVoltsOf(battery.volts, cell) }
  const end = supply.fedBy ? spent : endOf(model, supply, conditions, cell)
  const [talkHours, ringHours] = [use.talkMinutesPerDay / 60, use.ringMinutesPerDay / 60]
  const wattHours = talk * talkHours + ring * ringHours + idle * Math.max(0, 24 - talkHours - ringHours)
  const drain = { talkMA, idleMA, ampHours: given }
  return lasting(null, end, given * end.part, wattHours * perVolt, drain)
}

const endVoltsOf = (volts: number, cell: Cell | undefined): number | null =>
  cell ? (volts * cell.endVolts) / cell.volts : null

function setRow(station: string, { battery }: TelephoneSet, use: Use): EnduranceRow {
  if (!battery) return unknown(station, 'cells')
  const { talkMA, idleMA } = battery
  const cell = cellOf(battery.cell)
  const given = ampHours(battery.ampHours, cell, talkMA, use.tempC)
  const talkHours = use.talkMinutesPerDay / 60
  const end = { until: { code: 'spent' } as const, atVolts: endVoltsOf(battery.volts, cell) }
  const perDayMAh = talkMA * talkHours + idleMA * (24 - talkHours)
  return lasting(station, end, given * 1000, perDayMAh, { talkMA, idleMA, ampHours: given })
}

/** Relative width at which the search for the volts stops. */
const CLOSE = 1e-5

/** How far the supply's battery falls until a check fails or it is spent, and what part of it has been used by then. */
function endOf(model: CircuitModel, supply: Supply, conditions: Conditions, cell: Cell | undefined) {
  const at = (batteryFactor: number) => leastUnder(model, { ...conditions, batteryFactor })
  const last = Math.min(1, weakBatteryFactor(supply))
  const failsAt = (factor: number) => {
    const { nepers, check } = at(factor)
    return nepers >= 0 ? null : check
  }
  const fresh = failsAt(1)
  if (fresh) return { part: 0, until: { code: 'check', check: fresh } as const, atVolts: supply.volts }
  let check = failsAt(last)
  const used = (factor: number) => {
    if (cell) return partUsedAt(cell, factor * cell.volts)
    return last < 1 ? (1 - factor) / (1 - last) : 1
  }
  if (!check) {
    const part = cell ? used(last) : 1
    return { part, until: { code: 'spent' } as const, atVolts: last * supply.volts }
  }
  let [good, bad] = [1, last]
  while (good - bad > CLOSE) {
    const middle = (good + bad) / 2
    const failing = failsAt(middle)
    if (failing) [bad, check] = [middle, failing]
    else good = middle
  }
  return { part: used(good), until: { code: 'check', check } as const, atVolts: good * supply.volts }
}

/** Drain of a circuit's battery, mA: the heaviest call, and all sets on hook. */
function drainsMA(model: CircuitModel, conditions: Conditions): { talkMA: number; idleMA: number } {
  const ports = supplyPorts(model)
  const sides = ports.length > 0 ? ports.map(({ circuit }) => circuit) : [model]
  const series = model.supply!.supply.kind === 'series'
  const each = sides.map((side) => {
    const call = callsFrom(side, conditions, terminalsOf(side, conditions, 0))
    const amps = (sets: readonly number[]) => call(sets).amps * 1000
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
