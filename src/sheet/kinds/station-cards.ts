import { gridReference } from '../../geo/grid-reference'
import { isolated } from '../../isolated'
import type { StationId } from '../../plan/id'
import { type Station, stationName } from '../../plan/plan'
import { FIRST_AID } from '../../words/first-aid'
import { tongueOf } from '../../words/tongue'
import { formatLengthM, formatOhms } from '../../words/units'
import { verdictInShort } from '../../words/verdict-words'
import type { Block } from '../layout/block'
import type { PageSize } from '../layout/paper-size'
import { lineNumber } from '../line-marks'
import { circuitsIn, linesIn } from '../paper-scope'
import type { PaperSource } from '../paper-source'
import {
  dealOut,
  headingPart,
  kept,
  type Part,
  rowPart,
  smaller,
  stacked,
  textPart,
  textParts,
} from '../scene/card-parts'
import { cardSheets } from '../scene/card-sheets'
import { type HookUp, hookUpPart } from '../scene/hook-up'
import { PICTURE_MM, type Shape, stroke } from '../scene/scene'
import { fitText, textShapes } from '../scene/set-text'
import { callsAt, callsOfNet, hookUpsAt } from './station-facts'

const EDGE_MM = 5
const HEAD_MM = 17
const FOOT_MM = 2
/** Columns of the table of calls, in parts of the card's width. */
const CALL_COLUMNS = [0.3, 0.4, 0.15, 0.15]
/** So many lines are not parted. */
const FEW_LINES = 6
const METER_COLUMNS = [0.16, 0.46, 0.38]

/** A card for each station: how it is hooked up, who is called how, what a meter reads, what to try. By fours on a large sheet. */
export function stationCards(source: PaperSource, page: PageSize): readonly Block[] {
  const { plan } = source
  const calls = callsOfNet(source)
  const stations = [...plan.stations.values()].filter(({ id }) => hasWork(source, id))
  return cardSheets(page, 'Station cards', (size) => {
    const widthMm = size.widthMm - 2 * EDGE_MM
    const roomMm = size.heightMm - 2 * EDGE_MM - HEAD_MM - FOOT_MM
    return stations.flatMap((station) => {
      const cards = onFewestCards((width) => partsOf(source, calls, station, width), widthMm, roomMm)
      return cards.map((parts, i) => [
        ...head(source, station, widthMm, cards.length > 1 ? `card ${i + 1} of ${cards.length}` : ''),
        ...stacked(parts, [EDGE_MM, EDGE_MM + HEAD_MM]),
      ])
    })
  })
}

/** In letters so much smaller, 2.1 mm an em, a station may have one card less. */
const SMALLER = 0.82

/** Pieces dealt out to cards, in smaller letters where that saves a card. */
function onFewestCards(partsIn: (widthMm: number) => readonly Part[], widthMm: number, roomMm: number) {
  const usual = dealOut(partsIn(widthMm), roomMm)
  if (usual.length === 1) return usual
  const small = dealOut(partsIn(widthMm / SMALLER), roomMm / SMALLER)
  return small.length < usual.length
    ? small.map((parts) => parts.map((part) => smaller(part, SMALLER)))
    : usual
}

/** Where a line that the papers are for ends, or a telephone of a circuit that they are for hangs. */
function hasWork(source: PaperSource, id: StationId): boolean {
  const { lines, circuits } = source.plan
  const isEnd = linesIn(source).some((line) => {
    const ends = lines.get(line.id)
    return ends?.from === id || ends?.to === id
  })
  return isEnd || circuitsIn(source).some((circuit) => circuits.get(circuit.id)?.sets.has(id))
}

function head(source: PaperSource, station: Station, widthMm: number, which: string): readonly Shape[] {
  const { plan, fingerprint, date } = source
  const textMm = widthMm - PICTURE_MM - 2
  const number = [...plan.stations.keys()].indexOf(station.id) + 1
  const name = fitText(
    `${number}\u00a0${stationName(plan, station.id)}`,
    { widthMm: textMm, heightMm: 8 },
    [5, 2.1],
    true,
  )
  const basis = [
    `${gridReference(station.position) ?? 'outside the grid'} (WGS 84)`,
    isolated(plan.title),
    `plan\u00a0${fingerprint}`,
    ...(which ? [which] : []),
  ]
  const below = fitText(basis.join(' · '), { widthMm: textMm, heightMm: 6 }, [2.4, 1.5])
  return [
    ...textShapes(name, [EDGE_MM, EDGE_MM - 0.5]),
    ...textShapes(below, [EDGE_MM, EDGE_MM + 7.7]),
    {
      kind: 'text',
      text: date,
      at: [EDGE_MM, EDGE_MM + HEAD_MM - 2],
      anchor: 'start',
      sizeMm: 2.1,
      isRevised: true,
    },
    { kind: 'picture', at: [EDGE_MM + widthMm - PICTURE_MM, EDGE_MM - 0.5], sizeMm: PICTURE_MM },
    stroke(
      [
        [EDGE_MM, EDGE_MM + HEAD_MM - 1.2],
        [EDGE_MM + widthMm, EDGE_MM + HEAD_MM - 1.2],
      ],
      0.5,
    ),
  ]
}

function partsOf(
  source: PaperSource,
  callsOn: ReturnType<typeof callsOfNet>,
  station: Station,
  widthMm: number,
): readonly Part[] {
  const { plan, report, odds, system } = source
  const say = tongueOf(plan, system)
  const columns = (parts: readonly number[]) => parts.map((part) => part * widthMm)
  const circuits = report.circuits.flatMap((measured) => {
    const circuit = plan.circuits.get(measured.id)
    return circuit && (circuit.sets.has(station.id) || circuit.supply?.at === station.id)
      ? [{ circuit, measured, from: callsOn.get(circuit.id)! }]
      : []
  })
  const calls = circuits.flatMap(({ circuit, measured, from }): readonly Part[] => {
    const { ownRing, rows } = callsAt(plan, from, station.id)
    const sure = `${say.name(circuit.id)} ${verdictInShort(measured, odds.get(circuit.id), say)}.`
    // Who has no telephone on it is told how it stands, and no more.
    if (rows.length === 0 && !ownRing) return [textPart(sure, widthMm)]
    return [
      headingPart(say.name(circuit.id), widthMm),
      ...(ownRing ? [{ ...textPart(ownRing, widthMm, true), leads: true } as const] : []),
      rowPart(['Call', 'how', 'V there', 'V here'], columns(CALL_COLUMNS), { isHead: true }),
      ...rows.map((row) => rowPart(row, columns(CALL_COLUMNS))),
      textPart(sure, widthMm),
    ]
  })
  const lines = report.lines.filter((measured) => {
    const line = plan.lines.get(measured.id)
    return line?.from === station.id || line?.to === station.id
  })
  const meter = lines.map((measured) => {
    const line = plan.lines.get(measured.id)!
    const far = stationName(plan, line.from === station.id ? line.to : line.from)
    return rowPart(
      [
        `Line ${lineNumber(source, line.id)}`,
        `to ${far}, ${formatLengthM(measured.wireM, system)} of wire`,
        formatOhms(measured.loopOhms),
      ],
      columns(METER_COLUMNS),
    )
  })
  return [
    ...(station.note ? textParts(`Note: ${isolated(station.note)}`, widthMm, true) : []),
    ...hookUpParts(hookUpsAt(source, station.id), widthMm),
    ...calls,
    ...(meter.length > 0
      ? [
          headingPart('What the meter reads', widthMm),
          rowPart(['Line', 'off its posts', 'loop, far end shorted'], columns(METER_COLUMNS), {
            isHead: true,
          }),
          ...(meter.length <= FEW_LINES ? kept(meter) : meter),
        ]
      : []),
    headingPart('When the line is dead', widthMm),
    textPart(FIRST_AID.map((sentence, i) => `${i + 1}.\u00a0${sentence}`).join(' '), widthMm),
  ]
}

/** Where there is but one, its title stands in the heading. */
function hookUpParts(all: readonly HookUp[], widthMm: number): readonly Part[] {
  const [only] = all
  return only && all.length === 1
    ? [headingPart(`Hook-up: ${only.title}`, widthMm), hookUpPart({ ...only, title: '' }, widthMm)]
    : [headingPart('Hook-up', widthMm), ...all.map((hookUp) => hookUpPart(hookUp, widthMm))]
}
