import type { Line } from '../../plan/plan'
import type { ReportCircuit, ReportLine } from '../../report/report'
import { tongueOf } from '../../words/tongue'
import { unitOf } from '../../words/units'
import type { Cell, Table } from '../layout/table'
import { lineNumber, testPlaces } from '../line-marks'
import type { PaperSource } from '../paper-source'
import { TICK_BOX } from './leg-table'
import { loopOhmsAt } from './loop-ohms-at'

/** What a meter at the line's start should read with the pair shorted at each place where the crew measures. */
export function testPointTable(source: PaperSource, line: Line, measured: ReportLine): Table {
  const unit = unitOf('lengthM', source.system)
  return {
    title: 'Measure as you go: loop from the start, pair shorted there',
    columns: [
      { head: 'Where', share: 46 },
      { head: `Run ${unit.sign}`, share: 16 },
      { head: `Wire run ${unit.sign}`, share: 20 },
      { head: 'Loop Ω expected', share: 30, show: 1 },
      { head: 'Loop Ω read', share: 28 },
      { head: 'Rings', share: 13 },
      { head: 'Talks', share: 13 },
    ],
    rows: testPlaces(measured, tongueOf(source.plan, source.system)).map(({ what, groundM, wireM }) => [
      what,
      unit.fromSi(groundM),
      unit.fromSi(wireM),
      loopOhmsAt(line, measured, wireM) ?? null,
      '',
      TICK_BOX,
      TICK_BOX,
    ]),
  }
}

/** Loop and insulation of every line of one circuit, its far end shorted and then open. */
export function loopTable(source: PaperSource, circuit: ReportCircuit): Table {
  const { plan, report } = source
  const lines = new Set<string>(plan.circuits.get(circuit.id)?.lines ?? [])
  return {
    title: `${circuit.name}: its lines, sets taken off`,
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
      .map((line) => [lineNumber(source, line.id), line.name, line.loopOhms, '', '', '']),
  }
}

/** Most sets on a circuit for which every call has a row; above it each station has one row, with its worst figures. */
const MOST_SETS_FOR_PAIRS = 7

interface Call {
  readonly from: string
  readonly to: string
  readonly volts?: number | undefined
  readonly minVolts?: number | undefined
  readonly mA?: number | undefined
  readonly minMA?: number | undefined
  readonly lossDb?: number | undefined
  readonly maxDb?: number | undefined
}

/** Every figure of a circuit, gathered by who calls whom. The current is that through the set of `from`. */
function callsOf(circuit: ReportCircuit): readonly Call[] {
  const calls = new Map<string, Call>()
  const add = (from: string, to: string, figures: Partial<Call>) => {
    const key = JSON.stringify([from, to])
    calls.set(key, { ...calls.get(key), ...figures, from, to })
  }
  for (const { from, to, volts, minVolts } of circuit.ringing) add(from, to, { volts, minVolts })
  for (const { from, to, lossDb, maxDb } of circuit.voice) add(from, to, { lossDb, maxDb })
  for (const row of circuit.loop) {
    const other = row.call[0] === row.station ? row.call[1] : row.call[0]
    add(row.station, other, { mA: row.mA, minMA: row.minMA })
  }
  return [...calls.values()]
}

/** Each station's worst figures over all its calls. */
function worstByStation(calls: readonly Call[]): readonly Call[] {
  const least = <K extends keyof Call>(rows: readonly Call[], key: K, sign: 1 | -1) =>
    rows
      .filter((row) => row[key] !== undefined)
      .toSorted((a, b) => sign * (Number(a[key]) - Number(b[key])))[0]
  return [...new Set(calls.flatMap(({ from, to }) => [from, to]))].map((station) => {
    const { volts, minVolts } =
      least(
        calls.filter(({ to }) => to === station),
        'volts',
        1,
      ) ?? {}
    const { mA, minMA } =
      least(
        calls.filter(({ from }) => from === station),
        'mA',
        1,
      ) ?? {}
    const { lossDb, maxDb } =
      least(
        calls.filter(({ to }) => to === station),
        'lossDb',
        -1,
      ) ?? {}
    return { from: '', to: station, volts, minVolts, mA, minMA, lossDb, maxDb }
  })
}

/** What a circuit should measure when it is whole: ring volts, current, speech loss, each with its limit and a box to tick. */
export function callTable({ plan }: PaperSource, circuit: ReportCircuit): Table {
  const nameOf = (id: string) => [...plan.stations.values()].find((station) => station.id === id)?.name || id
  const sets = plan.circuits.get(circuit.id)?.sets.size ?? 0
  const everyCall = sets <= MOST_SETS_FOR_PAIRS
  const calls = everyCall ? callsOf(circuit) : worstByStation(callsOf(circuit))
  const feeds = circuit.loop.length > 0
  return {
    title: everyCall ? `${circuit.name}: every call` : `${circuit.name}: every station, its weakest call`,
    columns: [
      ...(everyCall ? [{ head: 'From', share: 24 }] : []),
      { head: everyCall ? 'To' : 'Station', share: 24 },
      { head: 'Ring V', share: 13, show: 1 },
      { head: 'least', share: 11 },
      ...(feeds
        ? [
            { head: everyCall ? 'mA at From' : 'mA', share: 15, show: 1 },
            { head: 'least', share: 11 },
          ]
        : []),
      { head: 'Loss dB', share: 13, show: 1 },
      { head: 'most', share: 11 },
      { head: 'Rings', share: 11 },
      { head: 'Talks', share: 11 },
      { head: 'Read', share: 20 },
    ],
    rows: calls.map((call): readonly Cell[] => [
      ...(everyCall ? [nameOf(call.from)] : []),
      nameOf(call.to),
      call.volts ?? null,
      call.minVolts ?? null,
      ...(feeds ? [call.mA ?? null, call.minMA ?? null] : []),
      call.lossDb ?? null,
      call.maxDb ?? null,
      call.volts === undefined ? '' : TICK_BOX,
      call.lossDb === undefined ? '' : TICK_BOX,
      '',
    ]),
  }
}
