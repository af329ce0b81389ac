import { gridReference } from '../../geo/grid-reference'
import { layingOrder } from '../../materials/laying-order'
import { linesByCrew } from '../../materials/share-lines'
import { stationName } from '../../plan/plan'
import { cautionText } from '../../words/caution-words'
import { nameIn, tongueOf } from '../../words/tongue'
import { formatLengthM, formatTempC } from '../../words/units'
import { verdictSentence } from '../../words/verdict-words'
import type { Block } from '../layout/block'
import { breakIntoSheets } from '../layout/break-sheets'
import { heightOfFewestSheets } from '../layout/highest-drawing'
import type { SheetRoom } from '../layout/paper-size'
import type { Table } from '../layout/table'
import { lineNumber } from '../line-marks'
import type { PaperSource } from '../paper-source'
import { letterOf, netDrawing, strokeOf, strokesDrawing } from '../scene/net-drawing'

/** Heights of the drawing, the best first, mm. */
const HEIGHTS_MM = [150, 140, 130, 120, 110, 100, 90, 80]

/** The whole net on one sheet, in large print as long as that takes no sheet more. */
export function netAtAGlance(source: PaperSource, room: SheetRoom): readonly Block[] {
  const { plan } = source
  if (plan.stations.size === 0) return []
  const [large, usual] = ([true, false] as const).map((isLarge) => glance(source, room, isLarge))
  const sheetsOf = (blocks: readonly Block[]) => breakIntoSheets(blocks, room).length
  return sheetsOf(large!) <= sheetsOf(usual!) ? large! : usual!
}

function glance(source: PaperSource, room: SheetRoom, isLarge: boolean): readonly Block[] {
  const { plan, report, system } = source
  const say = tongueOf(plan, system)
  const table = (of: Table): readonly Block[] =>
    of.rows.length > 0 ? [{ kind: 'table', table: { ...of, isLarge } }] : []
  const strokes = strokesDrawing(plan.circuits.size, room.widthMm)
  const legend: Block = {
    kind: 'drawing',
    heightMm: strokes.heightMm,
    drawing: { kind: 'scene', scene: strokes },
  }
  const below: readonly Block[] = [
    ...(plan.circuits.size > 0 ? [legend] : []),
    ...table(circuitKey(source)),
    ...table(stationKey(source)),
    ...table(lineKey(source)),
    ...(report.cautions.length > 0
      ? [
          {
            kind: 'box',
            title: 'Cautions',
            sentences: report.cautions.map((caution) => cautionText(caution, say)),
          } as const,
        ]
      : []),
    {
      kind: 'text',
      text: `Figures for ${plan.weather} weather, wire at ${formatTempC(plan.wireTempC, system)}. The order of laying begins at the first supply; each line starts from wire that lies.`,
    },
  ]
  const heights = HEIGHTS_MM.filter((heightMm) => heightMm < room.heightMm - 40)
  const heightMm = heightOfFewestSheets(heights, below, room)
  const { scene, unplaced } = netDrawing(source, room.widthMm, heightMm)
  return [
    { kind: 'drawing', heightMm, drawing: { kind: 'scene', scene } },
    ...(unplaced.length > 0
      ? [{ kind: 'text', text: `Not numbered on the map for want of room: ${unplaced.join(', ')}.` } as const]
      : []),
    ...below,
  ]
}

/** Circuits by letter and stroke: how each stands, today and at worst. */
function circuitKey({ plan, report, odds, system }: PaperSource): Table {
  const say = tongueOf(plan, system)
  return {
    title: 'Circuits',
    columns: [
      { head: '', share: 6 },
      { head: 'Stroke', share: 24 },
      { head: 'Circuit', share: 40 },
      { head: 'How it stands', share: 110 },
    ],
    rows: report.circuits.map((circuit, i) => [
      letterOf(i),
      strokeOf(i).name,
      nameIn(plan, circuit.id),
      verdictSentence(circuit, odds.get(circuit.id), say),
    ]),
  }
}

/** Stations by their numbers. */
function stationKey({ plan }: PaperSource): Table {
  const circuits = [...plan.circuits.values()]
  return {
    title: 'Stations',
    columns: [
      { head: 'No.', share: 10 },
      { head: 'Station', share: 48 },
      { head: 'Grid reference', share: 44 },
      { head: 'Telephone on', share: 44 },
      { head: 'Supply of', share: 24 },
    ],
    rows: [...plan.stations.values()].map(({ id, position }, i) => {
      const lettersOf = (is: (circuit: (typeof circuits)[number]) => boolean) =>
        circuits.flatMap((circuit, k) => (is(circuit) ? [letterOf(k)] : [])).join(', ')
      return [
        i + 1,
        stationName(plan, id),
        gridReference(position) ?? 'outside the grid',
        lettersOf(({ sets }) => sets.has(id)),
        lettersOf(({ supply }) => supply?.at === id),
      ]
    }),
  }
}

/** Lines in the order in which they are laid, crew by crew. */
function lineKey(source: PaperSource): Table {
  const { plan, report, system } = source
  const circuits = [...plan.circuits.values()]
  const numbers = new Map([...plan.stations.keys()].map((id, i) => [id, i + 1]))
  const measured = new Map(report.lines.map((line) => [line.id, line]))
  const crews = linesByCrew(report.hours).map((lines) => layingOrder(plan, lines))
  return {
    title: 'Lines in the order of laying',
    columns: [
      { head: 'Lay', share: 14 },
      { head: 'Line', share: 12 },
      { head: 'From – to', share: 24 },
      { head: 'Wire', share: 70 },
      { head: 'Ground', share: 24 },
      { head: 'Wire a pair', share: 28 },
      { head: 'Carries', share: 22 },
    ],
    rows: crews.flatMap((lines, crew) =>
      lines.flatMap((id, i) => {
        const line = plan.lines.get(id)
        const found = measured.get(id)
        if (!line || !found) return []
        const pairs =
          line.return === 'earth' ? ', earth return' : line.pairs > 1 ? `, ${line.pairs} pairs` : ''
        return [
          [
            crews.length > 1 ? `${crew + 1}.${i + 1}` : String(i + 1),
            String(lineNumber(source, id)),
            `${numbers.get(line.from)} – ${numbers.get(line.to)}`,
            `${nameIn(plan, line.wire)}${pairs}`,
            formatLengthM(found.groundM, system),
            formatLengthM(found.wireM, system),
            circuits.flatMap((circuit, k) => (circuit.lines.includes(id) ? [letterOf(k)] : [])).join(', '),
          ],
        ]
      }),
    ),
  }
}
