import type { LoopRow, RingingRow, Verdict, VoiceRow } from '../../budget/rows'
import { judgeLoop, judgeRinging, judgeVoice } from '../../budget/verdict'
import { formatDb, formatMA, formatVolts } from '../format'

/** One check, ready to be drawn: what there is beside what is needed. */
export interface MarginRow {
  readonly name: string
  readonly verdict: Verdict
  /** 1 where there is just as much as is needed; more is better. */
  readonly share: number
  readonly is: string
  readonly needs: string
}

type NameOf = (stationId: string) => string

export const ringingMargin = (row: RingingRow, nameOf: NameOf): MarginRow => ({
  name: `${nameOf(row.from)} → ${nameOf(row.to)}`,
  verdict: judgeRinging(row),
  share: row.minVolts > 0 ? row.volts / row.minVolts : 3,
  is: formatVolts(row.volts),
  needs: `/ ${formatVolts(row.minVolts)}`,
})

export const loopMargin = (row: LoopRow, nameOf: NameOf): MarginRow => ({
  name: `${nameOf(row.station)}, in ${nameOf(row.call[0])} – ${nameOf(row.call[1])}`,
  verdict: judgeLoop(row),
  share: row.minMA > 0 ? row.mA / row.minMA : 3,
  is: formatMA(row.mA),
  needs: `/ ${formatMA(row.minMA)}`,
})

/** Loss is good when small: the share is 3 without any, 1 at the most that is allowed, and less beyond. */
export const voiceMargin = (row: VoiceRow, nameOf: NameOf): MarginRow => ({
  name: `${nameOf(row.from)} → ${nameOf(row.to)}`,
  verdict: judgeVoice(row),
  share: row.lossDb <= row.maxDb ? 1 + (2 * (row.maxDb - row.lossDb)) / row.maxDb : row.maxDb / row.lossDb,
  is: formatDb(row.lossDb),
  needs: `of ${formatDb(row.maxDb)}`,
})
