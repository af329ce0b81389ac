import { gridReference } from '../../geo/grid-reference'
import { circuitName, type Line, stationName } from '../../plan/plan'
import type { ReportLine } from '../../report/report'
import { nameIn } from '../../words/tongue'
import { formatLengthM, formatOhms } from '../../words/units'
import { formatHours } from '../../words/work-words'
import type { PaperSource } from '../paper-source'

/** So many stations are told by name; of more, how many there are. */
const MOST_NAMES = 6

const circuitsOn = ({ plan }: PaperSource, line: Line) =>
  [...plan.circuits.values()].filter(({ lines }) => lines.includes(line.id))

/** `Camp (42U UU 54167 86403)`. */
function placeOf({ plan }: PaperSource, id: Line['from']): string {
  const position = plan.stations.get(id)?.position
  const grid = position && gridReference(position)
  return grid ? `${stationName(plan, id)} (${grid})` : stationName(plan, id)
}

/** What the line is, from where to where, how long, and who lays it. */
export function lineSummary(source: PaperSource, line: Line, measured: ReportLine): string {
  const { plan, report, system } = source
  const wire = nameIn(plan, line.wire)
  const pairs =
    line.pairs > 1 ? `${line.pairs} pairs` : line.return === 'earth' ? 'one wire and the earth' : 'one pair'
  const circuits = circuitsOn(source, line).map((circuit) => circuitName(plan, circuit))
  const hours = report.hours.lines.find((each) => each.line === line.id)
  return (
    `From ${placeOf(source, line.from)} to ${placeOf(source, line.to)}. ${wire}, ${pairs}; carries ${circuits.join(', ') || 'no circuit yet'}. ` +
    `Ground ${formatLengthM(measured.groundM, system)}; wire ${formatLengthM(measured.wireM, system)} a pair. ` +
    `Loop over the whole line, far end shorted: ${formatOhms(measured.loopOhms)}.` +
    (hours ? ` About ${formatHours(hours.totalH)} to lay, with a crew of ${hours.crew}.` : '')
  )
}

/** Which spool to begin with, and where to tie: what holds on every leg. */
export function layingWords({ plan, system }: PaperSource, line: Line, { pieces }: ReportLine): string {
  const first = new Map<number, string>()
  for (const { pair, spool } of pieces) if (!first.has(pair)) first.set(pair, spool)
  const spools = [...first].map(([pair, spool]) =>
    line.pairs > 1 ? `pair ${pair + 1} with spool ${spool}` : `with spool ${spool}`,
  )
  const begin =
    spools.length > 0
      ? `Begin at ${stationName(plan, line.from)} ${spools.join(', ')}.`
      : `Begin at ${stationName(plan, line.from)}; no spool is set aside for it.`
  return (
    `${begin} Leave ${formatLengthM(plan.allowances.tailM, system)} of tail at each end; tie in at both ends, at every bend and ` +
    'on both sides of a crossing, overhead at every support. Hang each tag as you pass.'
  )
}

/** Who stays where while the line is tested, and whom to ring when it is tied in. */
export function testWords(source: PaperSource, line: Line): string {
  const { plan } = source
  const from = stationName(plan, line.from)
  const calls = circuitsOn(source, line).flatMap(({ name, sets }) => {
    const others = [...sets.keys()].filter((id) => id !== line.to).map((id) => stationName(plan, id))
    if (others.length === 0) return []
    return [
      others.length > MOST_NAMES
        ? `the other ${others.length} sets of ${name}`
        : `${others.join(', ')} on ${name}`,
    ]
  })
  return (
    `Someone stays at ${from} with a set and a meter. At each place below: short the pair until they have read it, take the short off, ` +
    `then ring and speak with them.${calls.length > 0 ? ` Tied in at ${stationName(plan, line.to)}, ring ${calls.join('; ')}.` : ''}`
  )
}
