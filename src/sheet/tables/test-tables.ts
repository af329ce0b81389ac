import { tradeOf } from '../../budget/checks'
import type { CheckKind, Verdict } from '../../budget/rows'
import { judge, leastOf } from '../../budget/verdict'
import { stationName } from '../../plan/plan'
import type { ReportCircuit } from '../../report/report'
import { ASKED_KINDS, wordsOf } from '../../words/check-words'
import { nameIn } from '../../words/tongue'
import { type Cell, type Table, TICK_BOX } from '../layout/table'
import { lineNumber } from '../line-marks'
import type { PaperSource } from '../paper-source'
import { marked } from './verdict-mark'

/** Loop and insulation of every line of one circuit, its far end shorted and then open; none for what rides on pairs, which are tested themselves. */
export function loopTable(source: PaperSource, circuit: ReportCircuit): Table {
  const { plan, report } = source
  const drawn = plan.circuits.get(circuit.id)
  const lines = new Set<string>(drawn && !drawn.over ? drawn.lines : [])
  return {
    title: `${nameIn(plan, circuit.id)}: its lines, sets taken off`,
    columns: [
      { head: 'Line', share: 12 },
      { head: 'From – to', share: 50 },
      { head: 'Loop Ω expected, far end shorted', share: 34, show: 1 },
      { head: 'Loop Ω read', share: 22 },
      { head: 'Insulation MΩ, wire to wire', share: 28 },
      { head: 'wire to earth', share: 20 },
    ],
    rows: report.lines
      .filter((line) => lines.has(line.id))
      .map((line) => [lineNumber(source, line.id), nameIn(plan, line.id), line.loopOhms, '', '', '']),
  }
}

/** Most sets on a circuit for which every call has a row; above it each station has one row, with its worst figures. */
const MOST_SETS_FOR_PAIRS = 7

/** A row of the table of calls: by kind of check, what there is and the limit. */
interface Call {
  readonly from: string
  readonly to: string
  readonly figures: {
    readonly [K in CheckKind]?: { readonly have: number; readonly limit: number; readonly verdict: Verdict }
  }
}

/** Every figure of a circuit, gathered by who calls whom. */
function callsOf(circuit: ReportCircuit): readonly Call[] {
  const calls = new Map<string, Call>()
  for (const kind of ASKED_KINDS) {
    const { named, have, limit, call } = tradeOf(kind)
    for (const row of circuit[kind]) {
      const { from, to } = call(named(row) as never)
      const key = JSON.stringify([from, to])
      const figures = {
        ...calls.get(key)?.figures,
        [kind]: { have: have(row), limit: limit(row), verdict: judge(kind, row as never) },
      }
      calls.set(key, { from, to, figures })
    }
  }
  return [...calls.values()]
}

/** Each station's worst figure of every kind. */
function worstByStation(circuit: ReportCircuit): readonly Call[] {
  const stations = new Set(callsOf(circuit).flatMap(({ from, to }) => [from, to]))
  return [...stations].map((station) => {
    const figures = ASKED_KINDS.flatMap((kind) => {
      const { named, have, limit, where } = tradeOf(kind)
      const own = (circuit[kind] as readonly never[]).filter((row) => where(named(row) as never) === station)
      const least = leastOf(kind, own)
      return least
        ? [
            [
              kind,
              { have: have(least.row), limit: limit(least.row), verdict: judge(kind, least.row as never) },
            ] as const,
          ]
        : []
    })
    return { from: '', to: station, figures: Object.fromEntries(figures) }
  })
}

/** What a circuit should measure when it is whole: every kind of figure with its limit, and a box to tick. */
export function callTable({ plan }: PaperSource, circuit: ReportCircuit): Table {
  const nameOf = (id: string) => stationName(plan, id)
  const sets = plan.circuits.get(circuit.id)?.sets.size ?? 0
  const everyCall = sets <= MOST_SETS_FOR_PAIRS
  const kinds = ASKED_KINDS.filter((kind) => !wordsOf(kind).needsSupply || circuit[kind].length > 0)
  const ticked = kinds.filter((kind) => wordsOf(kind).columns.tick !== null)
  return {
    title: `${nameIn(plan, circuit.id)}: ${everyCall ? 'every call' : 'every station, its weakest call'}`,
    columns: [
      ...(everyCall ? [{ head: 'From', share: 24 }] : []),
      { head: everyCall ? 'To' : 'Station', share: 24 },
      ...kinds.flatMap((kind) => {
        const { figure, byStation, limit, shares } = wordsOf(kind).columns
        return [
          { head: everyCall ? figure : byStation, share: shares[0], show: 1 },
          { head: limit, share: shares[1] },
        ]
      }),
      ...ticked.map((kind) => ({ head: wordsOf(kind).columns.tick ?? '', share: 11 })),
      { head: 'As planned', share: 17 },
      { head: 'Read', share: 20 },
    ],
    rows: (everyCall ? callsOf(circuit) : worstByStation(circuit)).map(
      ({ from, to, figures }): readonly Cell[] => [
        ...(everyCall ? [nameOf(from)] : []),
        nameOf(to),
        ...kinds.flatMap((kind) => [figures[kind]?.have ?? null, figures[kind]?.limit ?? null]),
        ...ticked.map((kind) => (figures[kind] ? TICK_BOX : '')),
        marked(Object.values(figures).map(({ verdict }) => verdict)),
        '',
      ],
    ),
  }
}
