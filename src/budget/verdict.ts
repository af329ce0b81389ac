import { DB_PER_NEPER } from '../units'
import type { Check, CircuitRows, LoopRow, RingingRow, Verdict, VoiceRow } from './rows'

/** The comfort line: a check that passes with less than this to spare is thin. Allowances of the plan format. */
export const COMFORT = { loopRatio: 1.1, ringRatio: 1.25, voiceDb: 3 } as const

/** Verdicts in order: the higher, the better. */
export const RANK: Readonly<Record<Verdict, number>> = { fails: 0, thin: 1, works: 2 }

/** One check with how far it is from failing, in nepers: below 0 it fails. */
export interface Margin {
  readonly check: Check
  readonly nepers: number
  readonly verdict: Verdict
}

const judge = (fails: boolean, thin: boolean): Verdict => (fails ? 'fails' : thin ? 'thin' : 'works')

/** ln (have / need), where nothing needed is always met. */
const ratioNepers = (have: number, need: number): number =>
  need <= 0 ? Number.POSITIVE_INFINITY : Math.log(Math.max(have, 0) / need)

export const judgeLoop = (row: LoopRow): Verdict =>
  judge(row.mA < row.minMA, row.mA < COMFORT.loopRatio * row.minMA)
export const judgeRinging = (row: RingingRow): Verdict =>
  judge(row.volts < row.minVolts, row.volts < COMFORT.ringRatio * row.minVolts)
export const judgeVoice = (row: VoiceRow): Verdict =>
  judge(row.lossDb > row.maxDb, row.lossDb > row.maxDb - COMFORT.voiceDb)

/** The check with least to spare, over all three budgets; null where there is no check. */
export function leastMargin(rows: CircuitRows): Margin | null {
  let least: { kind: Check['kind']; row: LoopRow | RingingRow | VoiceRow } | null = null
  let nepers = Number.POSITIVE_INFINITY
  const consider = (kind: Check['kind'], row: LoopRow | RingingRow | VoiceRow, margin: number) => {
    if (least && !(margin < nepers)) return
    nepers = margin
    least = { kind, row }
  }
  for (const row of rows.loop) consider('loop', row, ratioNepers(row.mA, row.minMA))
  for (const row of rows.ringing) consider('ringing', row, ratioNepers(row.volts, row.minVolts))
  for (const row of rows.voice) consider('voice', row, (row.maxDb - row.lossDb) / DB_PER_NEPER)
  if (!least) return null
  const { kind, row } = least as { kind: Check['kind']; row: LoopRow | RingingRow | VoiceRow }
  if (kind === 'loop') {
    const { call, station } = row as LoopRow
    return { check: { kind, call, station }, nepers, verdict: judgeLoop(row as LoopRow) }
  }
  const { from, to } = row as RingingRow
  const verdict = kind === 'ringing' ? judgeRinging(row as RingingRow) : judgeVoice(row as VoiceRow)
  return { check: { kind, from, to }, nepers, verdict }
}

/** `ringing A → B`, or `loop A – B at A`: a check in words, by station ids. */
export function checkText(check: Check): string {
  return check.kind === 'loop'
    ? `loop ${check.call[0]} – ${check.call[1]} at ${check.station}`
    : `${check.kind} ${check.from} → ${check.to}`
}

/** Verdict of a circuit: *fails* where a check fails or something is missing, *thin* where a margin is under the comfort line. */
export function verdictOf(rows: CircuitRows, missing: readonly string[]): Verdict {
  const verdicts = [
    ...rows.loop.map(judgeLoop),
    ...rows.ringing.map(judgeRinging),
    ...rows.voice.map(judgeVoice),
  ]
  if (missing.length > 0 || verdicts.includes('fails')) return 'fails'
  return verdicts.includes('thin') ? 'thin' : 'works'
}
