import { judge } from '../../budget/verdict'
import type { ReportCircuit } from '../../report/report'
import type { Switchboard } from '../../report/switchboard'
import { throughCalls } from '../../report/through-calls'
import { tongueOf } from '../../words/tongue'
import type { Cell, Table } from '../layout/table'
import type { PaperSource } from '../paper-source'

/** More telephones than these find no room across a sheet: the rest stand better. */
const MOST = 14

/** Loss of every call through a board, the faintest in the corner. */
export function callTriangle(
  { plan, system }: PaperSource,
  { voice }: ReportCircuit,
  board: Switchboard,
): Table {
  const { name } = tongueOf(plan, system)
  const { telephones, calls } = throughCalls(board, voice)
  const shown = telephones.slice(0, MOST)
  const across = shown.slice(0, -1)
  const more = telephones.length > MOST ? `; ${telephones.length - MOST} more stand better` : ''
  return {
    title: `Calls through it: loss in dB, the faintest first${more}`,
    isDense: true,
    columns: [
      { head: 'Jack', share: 8 },
      { head: 'Who', share: 40 },
      ...across.map(({ label }) => ({ head: label, share: 10 })),
    ],
    rows: shown.map(({ station, label }, i): readonly Cell[] => [
      label,
      name(station),
      ...across.map((_, k) => {
        const row = i > 0 ? calls[i - 1]?.[k] : undefined
        if (!row) return ''
        const verdict = judge('voice', row)
        return `${row.lossDb.toFixed(row.lossDb < 10 ? 1 : 0)}${verdict === 'fails' ? ' ✗' : verdict === 'thin' ? ' thin' : ''}`
      }),
    ]),
  }
}
