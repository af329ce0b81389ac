import type { LoopRow, RingingRow, Verdict, VoiceRow } from '../../budget/rows'
import { judgeLoop, judgeRinging, judgeVoice } from '../../budget/verdict'
import { formatDb, formatMA, formatVolts, plainNumber } from '../../words/units'

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
  needs: `/ ${plainNumber(row.minVolts)}`,
})

export const loopMargin = (row: LoopRow, nameOf: NameOf): MarginRow => ({
  name: loopName(row, nameOf),
  verdict: judgeLoop(row),
  share: row.minMA > 0 ? row.mA / row.minMA : 3,
  is: formatMA(row.mA),
  needs: `/ ${plainNumber(row.minMA)}`,
})

/** Whose current it is, and with whom it speaks. */
function loopName({ call, station }: LoopRow, nameOf: NameOf): string {
  const other = call[0] === station ? call[1] : call[0]
  return `${nameOf(station)} with ${nameOf(other)}`
}

/** Loss is good when small: the share is 3 without any, 1 at the most that is allowed, and less beyond. */
const voiceMargin = (row: VoiceRow, name: string): MarginRow => ({
  name,
  verdict: judgeVoice(row),
  share: row.lossDb <= row.maxDb ? 1 + (2 * (row.maxDb - row.lossDb)) / row.maxDb : row.maxDb / row.lossDb,
  is: formatDb(row.lossDb),
  needs: `/ ${plainNumber(row.maxDb)}`,
})

/** Speech, pair by pair. Two ways that read alike are one row: `Hut ↔ Ford`. */
export function voiceMargins(rows: readonly VoiceRow[], nameOf: NameOf): readonly MarginRow[] {
  const key = (row: VoiceRow, from = row.from, to = row.to) =>
    JSON.stringify([from, to, formatDb(row.lossDb), row.maxDb])
  const all = new Set(rows.map((row) => key(row)))
  return rows.flatMap((row) => {
    const bothWays = all.has(key(row, row.to, row.from))
    if (bothWays && row.from > row.to) return []
    return [voiceMargin(row, `${nameOf(row.from)} ${bothWays ? '↔' : '→'} ${nameOf(row.to)}`)]
  })
}
