import { layingOrder } from '../../materials/laying-order'
import { linesByCrew } from '../../materials/share-lines'
import { type Line, stationName } from '../../plan/plan'
import { doneInShort } from '../../words/done-words'
import { nameIn, tongueOf } from '../../words/tongue'
import { unitOf } from '../../words/units'
import { verdictInShort, verdictSentence } from '../../words/verdict-words'
import type { Cell, Table } from '../layout/table'
import { lineNumber } from '../line-marks'
import type { PaperSource } from '../paper-source'
import { letterOf, strokeOf } from '../scene/net-drawing'
import { placeWords, sharedSquare } from './walk-table'

/** Circuits by letter and stroke: how each stands, today and at worst. */
export function circuitKey(
  { plan, report, odds, system }: PaperSource,
  place?: 'beside',
  isShort = false,
): Table {
  const say = tongueOf(plan, system)
  return {
    title: 'Circuits',
    columns: [
      { head: '', share: 6 },
      ...(place ? [] : [{ head: 'Stroke', share: 24 }]),
      { head: 'Circuit', share: place ? 26 : 40 },
      { head: 'How it stands', share: 110 },
    ],
    rows: report.circuits.map((circuit, i) => [
      letterOf(i),
      ...(place ? [] : [strokeOf(i).name]),
      nameIn(plan, circuit.id),
      isShort
        ? verdictInShort(circuit, odds.get(circuit.id), say)
        : verdictSentence(circuit, odds.get(circuit.id), say),
    ]),
  }
}

/** Stations by their numbers. */
export function stationKey({ plan }: PaperSource): Table {
  const circuits = [...plan.circuits.values()]
  const hasSupply = circuits.some(({ supply }) => supply)
  const square = sharedSquare([...plan.stations.values()])
  return {
    title: 'Stations',
    columns: [
      { head: 'No.', share: 10 },
      { head: 'Station', share: 48 },
      { head: square ? `Grid: ${square} …` : 'Grid reference', share: 44 },
      { head: 'Set on', share: 26 },
      ...(hasSupply ? [{ head: 'Feeds', share: 24 }] : []),
    ],
    rows: [...plan.stations.values()].map(({ id, position }, i) => {
      const lettersOf = (is: (circuit: (typeof circuits)[number]) => boolean) =>
        circuits.flatMap((circuit, k) => (is(circuit) ? [letterOf(k)] : [])).join(', ')
      return [
        i + 1,
        stationName(plan, id),
        placeWords(position, square),
        lettersOf(({ sets }) => sets.has(id)),
        ...(hasSupply ? [lettersOf(({ supply }) => supply?.at === id)] : []),
      ]
    }),
  }
}

/** Lines in the order in which they are laid, crew by crew. */
export function lineKey(source: PaperSource): Table {
  const { plan, report, system } = source
  const circuits = [...plan.circuits.values()]
  const numbers = new Map([...plan.stations.keys()].map((id, i) => [id, i + 1]))
  const measured = new Map(report.lines.map((line) => [line.id, line]))
  const unit = unitOf('lengthM', system)
  const say = tongueOf(plan, system)
  const done = report.lines.some(({ field }) => field.laidM + field.recoveredM > 0)
  const hours = new Map(report.hours.lines.map(({ line, totalH }) => [line, totalH]))
  const crews = linesByCrew(report.hours).map((lines) => layingOrder(plan, lines))
  const hasPairs = [...plan.lines.values()].some((line) => line.return === 'earth' || line.pairs > 1)
  const wires = new Set([...plan.lines.values()].map(({ wire }) => wire))
  // One wire for all is said once, above the table.
  const only = wires.size === 1 ? [...wires][0] : undefined
  const wireOf = (line: Line): Cell[] => {
    const pairs = line.return === 'earth' ? 'earth return' : line.pairs > 1 ? `${line.pairs} pairs` : ''
    return only ? (hasPairs ? [pairs] : []) : [[nameIn(plan, line.wire), pairs].filter(Boolean).join(', ')]
  }
  return {
    title: `Lines in the order of laying${only ? `: ${nameIn(plan, only)}` : ''}`,
    columns: [
      { head: 'Lay', share: 14 },
      { head: 'Line', share: 12 },
      { head: 'From – to', share: 24 },
      ...(only ? (hasPairs ? [{ head: 'Pairs', share: 30 }] : []) : [{ head: 'Wire', share: 70 }]),
      { head: `Ground ${unit.sign}`, share: 20 },
      { head: `Wire ${unit.sign}`, share: 20 },
      { head: 'Loop Ω', share: 18, show: 1 },
      { head: 'Hours', share: 16, show: 1 },
      { head: 'Carries', share: 22 },
      ...(done ? [{ head: 'Done', share: 26 }] : []),
    ],
    rows: crews.flatMap((lines, crew) =>
      lines.flatMap((id, i) => {
        const line = plan.lines.get(id)
        const found = measured.get(id)
        if (!line || !found) return []
        return [
          [
            crews.length > 1 ? `${crew + 1}.${i + 1}` : String(i + 1),
            String(lineNumber(source, id)),
            `${numbers.get(line.from)} – ${numbers.get(line.to)}`,
            ...wireOf(line),
            unit.fromSi(found.groundM),
            unit.fromSi(found.wireM),
            found.loopOhms,
            hours.get(id) ?? null,
            circuits.flatMap((circuit, k) => (circuit.lines.includes(id) ? [letterOf(k)] : [])).join(', '),
            ...(done ? [doneInShort(found.field, found.wireM, say)] : []),
          ],
        ]
      }),
    ),
  }
}
