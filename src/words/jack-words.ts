import type { RingingRow } from '../budget/rows'
import { judge } from '../budget/verdict'
import type { Plan } from '../plan/plan'
import { ringCode } from '../plan/ring-code'
import type { Jack } from '../report/switchboard'
import { ringWords } from './ring-words'
import type { Tongue } from './tongue'
import { formatList, plainNumber } from './units'

/** Who is on a jack: `North rig`; of a shared line each with its ring; of a trunk the board at its other end; `nobody`. */
export function whoIsOn({ stations, trunkTo }: Jack, plan: Plan, { name }: Tongue): string {
  const there = stations.map((station, i) =>
    stations.length > 1 ? `${name(station)} (${ringWords(ringCode(i))})` : name(station),
  )
  const at = trunkTo === null ? undefined : plan.circuits.get(trunkTo)?.supply?.at
  const trunk = at === undefined ? [] : [`trunk to ${name(at)}`]
  return formatList([...trunk, ...there], stations.length + 1) || 'nobody'
}

/** What a ring does there: `falls: 50 V`, `does not fall: 8 of 10 V`; a dash where nothing rings. */
export function ringsWords(row: RingingRow | null, does: readonly [yes: string, no: string]): string {
  if (!row) return '–'
  const [yes, no] = does
  const verdict = judge('ringing', row)
  const word = verdict === 'fails' ? no : verdict === 'thin' ? `barely ${yes}` : yes
  return `${word}: ${voltsWords(row)}`
}

/** `50 V`; with what is needed where that is not there with room to spare: `8 of 10 V`. */
export function voltsWords(row: RingingRow): string {
  const volts = row.volts.toFixed(row.volts < 10 ? 1 : 0)
  const needs = judge('ringing', row) === 'works' ? '' : ` of ${plainNumber(row.minVolts)}`
  return `${volts}${needs}\u00a0V`
}

export const DROP_WORDS = ['falls', 'does not fall'] as const
export const BELL_WORDS = ['rings', 'does not ring'] as const
