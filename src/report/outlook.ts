import { type HowToCall, howToCall } from '../budget/calling'
import { tradeOf } from '../budget/checks'
import { lossAgainstHz } from '../budget/choices'
import type { CircuitModel } from '../budget/circuit-model'
import type { Conditions } from '../budget/conditions'
import { type EnduranceRow, enduranceRows, supplyEndurance, type Use } from '../budget/endurance'
import { worstCorner } from '../budget/envelope'
import { crowdRow, type LeftOffHook, leftOffHookRows } from '../budget/left-lying'
import { longestWay, shortestWay } from '../budget/path'
import { reachOf } from '../budget/reach'
import type { Check, VoiceRow } from '../budget/rows'
import { isSwitchboard } from '../budget/trunk-ends'
import { leastOf } from '../budget/verdict'
import { type PartAlone, partsAlone, type WorstBecause, worstBecause } from '../budget/worst-parts'
import type { Plan } from '../plan/plan'
import { workOf } from '../plan/work'
import { type Quoted, quotedFor } from './quoted-reach'
import type { ReportCircuit } from './report'

/** A length of wire along a route: the way of the check that ends the reach, as long as it could be. */
export interface ReachAlong {
  readonly from: string
  readonly to: string
  /** Wire along it as drawn, and when the check fails, m. */
  readonly wireM: number
  readonly reachM: number
}

/** What a circuit does on a bad day, and how it is used: reckoned on demand, beside the report. */
export interface Outlook {
  readonly calling: HowToCall
  readonly offHook: readonly LeftOffHook[]
  readonly crowd: VoiceRow | null
  /** Where speech is near its limit: what the faintest pair loses at the higher pitches that make words clear; else null. */
  readonly pitch: Pitch | null
  readonly endurance: readonly EnduranceRow[]
  /** Days that the battery behind a board or an exchange lasts at so many calls a day; empty elsewhere. */
  readonly callsPerDay: readonly { readonly calls: number; readonly days: number | null }[]
  /** Each part of the worst weather by itself with how far it would let the circuit reach, and which of them it takes; null where it works. */
  readonly worstAlone: readonly (PartAlone & { readonly along: ReachAlong | null })[]
  readonly worstBecause: WorstBecause | null
  readonly reachAlong: ReachAlong | null
  readonly worstReachAlong: ReachAlong | null
  /** What people quote for such a net, and how far it would reach in the worst weather if all its wire were worn; null where it is not farther than that. */
  readonly quoted: (Quoted & { readonly wornAlong: ReachAlong | null }) | null
}

interface Pitch {
  readonly from: string
  readonly to: string
  readonly losses: readonly { readonly hz: number; readonly lossDb: number }[]
}

/** Speech is near its limit from so many dB below it on: of 30 dB from 24, where an engineer would begin to doubt (common practice). */
const NEAR_DB = 6

function pitchOf(model: CircuitModel, today: Conditions, voice: readonly VoiceRow[]): Pitch | null {
  const faintest = leastOf('voice', voice)?.row
  if (!faintest || faintest.lossDb < faintest.maxDb - NEAR_DB) return null
  const { from, to } = faintest
  return { from, to, losses: lossAgainstHz(model, today, from, to, [2000, 3000]) }
}

/** @param model the circuit's network  @param today the plan's own conditions */
export function outlookOf(
  plan: Plan,
  model: CircuitModel,
  today: Conditions,
  { missing, voice, reach, worst }: Pick<ReportCircuit, 'missing' | 'voice' | 'reach' | 'worst'>,
): Outlook {
  const corner = worstCorner(model, today, missing)
  const calling = howToCall(model, today)
  const reachAlong = along(model, reach)
  return {
    calling,
    offHook: leftOffHookRows(model, today),
    crowd: crowdRow(model, today),
    pitch: pitchOf(model, today, voice),
    endurance: enduranceRows(model, today, useOf(plan)),
    callsPerDay: callsPerDay(model, today, plan),
    worstAlone: partsAlone(model, today, missing).map((part) => ({
      ...part,
      along: along(model, part.reach),
    })),
    worstBecause: worstBecause(model, today, corner.conditions),
    reachAlong,
    worstReachAlong: along(model, worst.reach),
    quoted: quotedOf(model, calling, reachAlong, corner.conditions),
  }
}

/** Calls a day for which the battery of a board is told, and what one of them takes: three minutes of talk and five rings of two seconds. Allowances. */
const CALLS = [10, 30, 100, 300]
const CALL = { talkMinutes: 3, ringMinutes: 10 / 60 } as const

function callsPerDay(model: CircuitModel, today: Conditions, plan: Plan): Outlook['callsPerDay'] {
  if (!isSwitchboard(model.supply?.supply)) return []
  return CALLS.flatMap((calls) => {
    const use = {
      talkMinutesPerDay: calls * CALL.talkMinutes,
      ringMinutesPerDay: calls * CALL.ringMinutes,
      tempC: plan.wireTempC,
    }
    const own = supplyEndurance(model, today, use)[0]
    return own && own.until.code !== 'unknown' ? [{ calls, days: own.days }] : []
  })
}

/** A reach that is farther than this many times what people quote wants a reason. */
const FARTHER = 1.25

function quotedOf(
  model: CircuitModel,
  calling: HowToCall,
  reachAlong: ReachAlong | null,
  worst: Conditions,
): Outlook['quoted'] {
  const quoted = quotedFor(model, calling)
  if (!quoted || !reachAlong || reachAlong.reachM <= FARTHER * quoted.quotedM) return null
  const worn = { ...model, lines: model.lines.map((line) => ({ ...line, worn: true as const })) }
  return { ...quoted, wornAlong: along(worn, reachOf(worn, worst)) }
}

/** How the net is used in a day, by the plan; batteries are as warm as the wire. */
export const useOf = (plan: Plan): Use => ({
  talkMinutesPerDay: workOf(plan, 'talkMinutesPerDay'),
  ringMinutesPerDay: workOf(plan, 'ringMinutesPerDay'),
  tempC: plan.wireTempC,
})

/**
 * The way between the two ends of the check that fails first; of current behind a ringdown unit the way from the unit, as none passes through it;
 * of a check at one station the longest way of the circuit.
 */
function along(
  model: CircuitModel,
  { factor, check }: { factor: number; check: Check | null },
): ReachAlong | null {
  if (!check) return null
  const { from, to } = endsOf(model, check)
  const way = shortestWay(model, model.stations.indexOf(from), model.stations.indexOf(to)) ?? []
  const wireM = way.reduce((sum, line) => sum + line.wireM, 0)
  if (wireM > 0) return { from, to, wireM, reachM: factor * wireM }
  const longest = longestWay(model)
  return longest && { ...longest, reachM: factor * longest.wireM }
}

function endsOf(
  { supply, stations }: CircuitModel,
  check: Check,
): { readonly from: string; readonly to: string } {
  if (
    check.kind === 'loop' &&
    supply &&
    (supply.supply.kind === 'ringdown' || isSwitchboard(supply.supply)) &&
    stations[supply.node] !== check.station
  )
    return { from: stations[supply.node]!, to: check.station }
  return tradeOf(check.kind).call(check as never)
}
