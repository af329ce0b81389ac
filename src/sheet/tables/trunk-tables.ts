import { judge } from '../../budget/verdict'
import { measurePlan } from '../../measure/measure-line'
import { stationName } from '../../plan/plan'
import type { Trunk } from '../../report/trunks'
import { isUsable, trunksOfNet } from '../../report/trunks-of-net'
import { formatDb, formatList } from '../../words/units'
import { type Cell, type Table, TICK_BOX } from '../layout/table'
import { lineNumber } from '../line-marks'
import type { PaperSource } from '../paper-source'
import { marked } from './verdict-mark'

/** Every line from one of these boards to another of them. */
export const trunksIn = (
  { plan, catalog, ground }: PaperSource,
  boards: readonly { readonly circuit: { readonly id: string } }[],
): readonly Trunk[] =>
  boards.length < 2
    ? []
    : trunksOfNet(plan, catalog, measurePlan(plan, ground)).filter(({ circuits }) =>
        circuits.every((id) => boards.some(({ circuit }) => circuit.id === id)),
      )

const linesOf = (source: PaperSource, { lines }: Trunk) =>
  lines.map((id) => lineNumber(source, id)).join(', ')

/** Each trunk with its faintest call. */
export function trunkTable(source: PaperSource, trunks: readonly Trunk[]): Table {
  const { plan } = source
  const name = (id: string) => stationName(plan, id)
  return {
    title: 'Trunks',
    columns: [
      { head: 'From – to', share: 50 },
      { head: 'Lines', share: 20 },
      { head: 'Puts calls through', share: 40 },
      { head: 'Faintest call', share: 60 },
      { head: 'Usable', share: 16 },
    ],
    rows: trunks.map((trunk) => {
      const [worst] = trunk.calls
      return [
        trunk.stations.map(name).join(' – '),
        linesOf(source, trunk),
        worst && worst.byHand.length > 0 ? formatList(worst.byHand.map(name), 2) : 'nobody',
        worst ? `${name(worst.from)} – ${name(worst.to)}, ${formatDb(worst.lossDb)}` : 'none',
        isUsable(trunk) ? 'yes' : 'no',
      ]
    }),
  }
}

/** So many of a trunk's calls are tried: where the faintest are heard, all are. */
const MOST_CALLS = 4

/** What a test of each trunk should show: ringing from board to board both ways, and its faintest calls. */
export function trunkTestTable(source: PaperSource, trunks: readonly Trunk[]): Table {
  const name = (id: string) => stationName(source.plan, id)
  const hands = (byHand: readonly string[]) => (byHand.length > 0 ? byHand.map(name).join(', ') : 'nobody')
  return {
    title: 'Trunks between boards',
    columns: [
      { head: 'Line', share: 10 },
      { head: 'From', share: 26 },
      { head: 'To', share: 26 },
      { head: 'Ring V', share: 12, show: 1 },
      { head: 'least', share: 10 },
      { head: 'Loss dB', share: 13, show: 1 },
      { head: 'most', share: 10 },
      { head: 'Put through by', share: 26 },
      { head: 'Works', share: 12 },
      { head: 'As planned', share: 16 },
      { head: 'Read', share: 16 },
    ],
    rows: trunks.flatMap((trunk): readonly (readonly Cell[])[] => {
      const line = linesOf(source, trunk)
      const closed = trunk.joinsExchanges ? '✗ FAILS' : ''
      return [
        ...trunk.ringing.map((row) => [
          ...[line, name(row.from), `the drop at ${name(row.to)}`, row.volts, row.minVolts],
          ...[null, null, '', TICK_BOX, closed || marked([judge('ringing', row)]), ''],
        ]),
        ...trunk.calls
          .slice(0, MOST_CALLS)
          .map((row) => [
            ...[line, name(row.from), name(row.to), null, null],
            ...[
              row.lossDb,
              row.maxDb,
              hands(row.byHand),
              TICK_BOX,
              closed || marked([judge('voice', row)]),
              '',
            ],
          ]),
      ]
    }),
  }
}
