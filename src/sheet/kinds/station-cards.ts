import { gridReference } from '../../geo/grid-reference'
import { isolated } from '../../isolated'
import type { StationId } from '../../plan/id'
import { type Station, stationName } from '../../plan/plan'
import { FIRST_AID } from '../../words/first-aid'
import { tongueOf } from '../../words/tongue'
import { formatLengthM, formatOhms } from '../../words/units'
import { verdictInShort } from '../../words/verdict-words'
import type { PageSize } from '../layout/paper-size'
import { lineNumber } from '../line-marks'
import { circuitsIn, linesIn } from '../paper-scope'
import type { PaperSource } from '../paper-source'
import { headingPart, kept, type Part, rowPart, textPart, textParts } from '../scene/card-parts'
import type { Card } from '../scene/card-sheets'
import { type HookUp, hookUpPart } from '../scene/hook-up'
import { paperCards } from '../scene/paper-card'
import { codeOfStation } from './paper-code'
import { callsAt, callsOfNet, hookUpsAt } from './station-facts'

/** Columns of the table of calls, in parts of the card's width. */
const CALL_COLUMNS = [0.3, 0.4, 0.15, 0.15]
/** So many lines are not parted. */
const FEW_LINES = 6
const METER_COLUMNS = [0.16, 0.46, 0.38]

/** A card for each station: how it is hooked up, who is called how, what a meter reads, what to try. */
export function stationCards(source: PaperSource, page: PageSize): readonly Card[] {
  const { plan } = source
  const calls = callsOfNet(source)
  const numbers = new Map([...plan.stations.keys()].map((id, i) => [id, i + 1]))
  return [...plan.stations.values()]
    .filter(({ id }) => hasWork(source, id))
    .flatMap((station) =>
      paperCards(
        source,
        page,
        {
          name: `${numbers.get(station.id)}\u00a0${stationName(plan, station.id)}`,
          place: `${gridReference(station.position) ?? 'outside the grid'} (WGS 84)`,
          code: codeOfStation(source, station.id),
        },
        (widthMm) => partsOf(source, calls, station, widthMm),
      ),
    )
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
