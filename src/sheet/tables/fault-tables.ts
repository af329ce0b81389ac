import { lineConstants } from '../../budget/line-constants'
import { murrayOhm, varleyOhm } from '../../budget/loop-tests'
import { isolated } from '../../isolated'
import type { Line } from '../../plan/plan'
import type { ReportLine } from '../../report/report'
import { nameIn } from '../../words/tongue'
import { unitOf } from '../../words/units'
import type { Cell, Table } from '../layout/table'
import { lineNumber, tagMarks } from '../line-marks'
import { linesIn } from '../paper-scope'
import type { PaperSource } from '../paper-source'

/** Loop readings for which the distance is told, Ω. */
const READINGS_OHM = [5, 10, 20, 50, 100, 200, 500, 1000]

/** How far off a short lies, by what a meter reads, for each kind of wire in the plan. */
export function shortTable({ plan, catalog, system }: PaperSource): Table {
  const unit = unitOf('lengthKm', system)
  const wires = [...new Set([...plan.lines.values()].map((line) => line.wire))].flatMap(
    (id) => catalog.wires.get(id) ?? [],
  )
  return {
    title: `A short: ${unit.sign} of wire from the meter, by the loop that it reads`,
    columns: [
      { head: 'Wire', share: 60 },
      ...READINGS_OHM.map((ohm) => ({ head: `${ohm} Ω`, share: 15, show: 2 })),
    ],
    rows: wires.map((wire) => {
      const { ohmPerKm } = lineConstants(wire, plan.weather, plan.wireTempC)
      return [isolated(wire.name), ...READINGS_OHM.map((ohm) => unit.fromSi((ohm / ohmPerKm) * 1000))]
    }),
  }
}

/** A bridge in balance at one part in a hundred, and at one ohm: both readings are in proportion to the distance. */
function bridgeM(loopOhm: number, wireM: number): { readonly murrayM: number; readonly varleyM: number } {
  const ohmPerM = loopOhm / (2 * wireM)
  return {
    murrayM: murrayOhm(loopOhm, 1, 99) / ohmPerM,
    varleyM: varleyOhm(loopOhm, loopOhm - 1) / ohmPerM,
  }
}

function faultRow(source: PaperSource, line: Line, measured: ReportLine): readonly Cell[] {
  const { plan, catalog, system } = source
  const unit = unitOf('lengthM', system)
  const wire = catalog.wires.get(line.wire)
  const own = [
    lineNumber(source, line.id),
    nameIn(plan, measured.id),
    unit.fromSi(measured.wireM),
    measured.loopOhms,
  ]
  // What an earth return reads hangs on its rods and on the ground beside it, not on its length alone.
  if (line.return === 'earth' || !wire) return [...own, null, null, null, null, null, null, null]
  const { ohmPerKm } = lineConstants(wire, plan.weather, plan.wireTempC)
  const { murrayM, varleyM } = bridgeM(measured.loopOhms, measured.wireM)
  const dry = wire.nanoFPerKm
  const wet = wire.wetNanoFPerKm ?? dry
  return [
    ...own,
    unit.fromSi(1000 / ohmPerKm),
    unit.fromSi(murrayM),
    unit.fromSi(varleyM),
    (dry * measured.wireM) / 1000,
    unit.fromSi(1000 / dry),
    (wet * measured.wireM) / 1000,
    unit.fromSi(1000 / wet),
  ]
}

/** Every line with the figures by which a reading becomes a distance along its wire. */
export function faultTable(source: PaperSource): Table {
  const { plan, system } = source
  const { sign } = unitOf('lengthM', system)
  return {
    isDense: true,
    title: `Each line: ${sign} of wire from the meter for each step of a reading`,
    columns: [
      { head: 'Line', share: 11 },
      { head: 'From – to', share: 38 },
      { head: `Wire ${sign}`, share: 16 },
      { head: 'Loop Ω', share: 16, show: 1 },
      { head: `Short: ${sign} per Ω`, share: 18, show: 1 },
      { head: `Murray: ${sign} per 0.01`, share: 20, show: 1 },
      { head: `Varley: ${sign} per Ω`, share: 18, show: 1 },
      { head: 'Open, dry: nF whole', share: 17, show: 1 },
      { head: `${sign} per nF dry`, share: 17, show: 1 },
      { head: 'Open, wet: nF whole', share: 17, show: 1 },
      { head: `${sign} per nF wet`, share: 17, show: 1 },
    ],
    rows: linesIn(source).flatMap((measured) => {
      const line = plan.lines.get(measured.id)
      return line ? [faultRow(source, line, measured)] : []
    }),
  }
}

/** Cuts that are worth a walk: after these what is left is walked along. */
const MOST_CUTS = 4

/** The tags at which a line is opened, cut by cut: each cut has one tag for each stretch that the cuts before may have left. */
export function halvingCuts(count: number): readonly (readonly number[])[] {
  let stretches: readonly (readonly [from: number, to: number])[] = [[0, count - 1]]
  const cuts: number[][] = []
  while (cuts.length < MOST_CUTS) {
    const open = stretches.filter(([from, to]) => to - from > 1)
    if (open.length === 0) break
    cuts.push(open.map(([from, to]) => Math.floor((from + to) / 2)))
    stretches = open.flatMap(([from, to]): readonly (readonly [number, number])[] => {
      const middle = Math.floor((from + to) / 2)
      return [
        [from, middle],
        [middle, to],
      ]
    })
  }
  return cuts
}

/** Where each line is opened to halve it, by the names on its own tags. */
export function halvingTable(source: PaperSource): Table {
  const { plan } = source
  return {
    isDense: true,
    title: 'Halving: open here; the silent side holds the fault, and the next cut is the one in its middle',
    columns: [
      { head: 'Line', share: 9 },
      { head: 'From – to', share: 34 },
      { head: 'Tags', share: 18 },
      ...['First cut', 'Second', 'Third', 'Fourth'].map((head, i) => ({ head, share: 14 + 10 * i })),
    ],
    rows: linesIn(source).flatMap((measured) => {
      const line = plan.lines.get(measured.id)
      if (!line) return []
      const names = tagMarks(source, line, measured).map(({ name }) => name)
      const cuts = halvingCuts(names.length)
      return [
        [
          lineNumber(source, line.id),
          nameIn(plan, measured.id),
          `${names[0]} to ${names.at(-1)}`,
          ...Array.from({ length: MOST_CUTS }, (_, i) => (cuts[i] ?? []).map((tag) => names[tag]).join(', ')),
        ],
      ]
    }),
  }
}

/** Room for what is found, so that the next crew need not begin anew. */
export const faultLog = (rows: number): Table => ({
  isWrittenIn: true,
  title: 'Faults found',
  columns: [
    { head: 'Date and hour', share: 30 },
    { head: 'Line', share: 12 },
    { head: 'Sign and reading', share: 50 },
    { head: 'Place found', share: 40 },
    { head: 'Cleared', share: 24 },
    { head: 'Name', share: 26 },
  ],
  rows: Array.from({ length: rows }, () => ['', '', '', '', '', '']),
})
