import { goesByEarth } from '../fault/bridge'
import type { Evidence, Known } from '../fault/evidence'
import { type FaultFound, locateFault } from '../fault/locate'
import { onceEach } from '../fault/observed'
import { lineTags } from '../measure/line-tags'
import type { MeasuredLine } from '../measure/measured'
import type { LineId } from '../plan/id'
import type { Circuit, Plan } from '../plan/plan'
import { standingRecords } from '../plan/standing-records'
import { bad, ok, type Problem, type Result } from '../problem'
import { circuitNetwork } from './circuit-network'
import { laidCatalog } from './learned-of'

type Measured = ReadonlyMap<LineId, MeasuredLine>

/** With more different readings an answer takes longer than anybody waits; a crew seldom takes a dozen. */
const MOST_READINGS = 40

const isMeasured = (each: Known) => 'what' in each || 'murray' in each || 'varley' in each || 'echo' in each

/** Where a fault of a circuit lies, with the wire that really lies there; refused is evidence of a place or a bridge that cannot be. */
export function locateInCircuit(
  plan: Plan,
  circuit: Circuit,
  measured: Measured,
  evidence: readonly Evidence[],
): Result<FaultFound> {
  // What stands as evidence here does not teach of the wire as well: it would count twice.
  const named = new Set(evidence.flatMap((each) => ('record' in each ? [each.record] : [])))
  const taught =
    named.size === 0 ? plan : { ...plan, field: plan.field?.filter(({ id }) => !named.has(id)) ?? [] }
  const model = circuitNetwork(plan, circuit, laidCatalog(taught, measured), measured)
  const problems: Problem[] = []
  const known = evidence.flatMap((each, index): Known[] => {
    const said = 'record' in each ? knownOf(plan, circuit, each.record) : each
    const at = `evidence[${index}]`
    const wrong = typeof said === 'string' ? said : amiss(said, measured)
    const byEarth =
      typeof said !== 'string' && ('murray' in said || 'varley' in said) && goesByEarth(plan, model, said)
    if (wrong) problems.push({ code: 'out-of-range', at, message: wrong })
    if (byEarth) {
      const message = 'A bridge needs a good wire back, and a line on this way returns by earth.'
      problems.push({ code: 'bridge-by-earth', at, message })
    }
    return typeof said === 'string' ? [] : [said]
  })
  if (onceEach(known).filter(isMeasured).length > MOST_READINGS) {
    const message = `There are more than ${MOST_READINGS} different readings: leave out those that were read first.`
    problems.push({ code: 'too-many', at: 'evidence', message })
  }
  if (problems.length > 0) return bad(...problems)
  return ok(locateFault(plan, model, known, tagsOf(plan, circuit, measured), besideOf(plan, circuit)))
}

/** What a record of the walk tells of a fault, or why it tells nothing. */
function knownOf(plan: Plan, circuit: Circuit, id: string): Known | string {
  const record = standingRecords(plan).find((each) => each.id === id)!
  if (!circuit.lines.includes(record.line))
    return 'The record is of a line that this circuit does not use: name a record of one of its own.'
  if (record.kind === 'tested') {
    const { line, fromM, toM } = record
    return { sound: { line, fromM, toM } }
  }
  if (record.kind !== 'reading')
    return 'The record is no reading: name a reading, or a stretch that was tested.'
  if (record.stale)
    return 'The line was cut since this was read: it tells nothing of the line as it lies now.'
  const { line, wireM, toward, far, what, value, meterPct, tempC, weather } = record
  return {
    ...{ line, wireM, toward, far, what, value },
    ...(meterPct !== undefined && { meterPct }),
    ...(tempC !== undefined && { tempC }),
    ...(weather !== undefined && { weather }),
  }
}

/** What is said of a place that is not on its line. */
function amiss(each: Known, measured: Measured): string | undefined {
  const place = 'line' in each ? each : 'sound' in each ? { ...each.sound, wireM: each.sound.toM } : undefined
  if (!place) return undefined
  const { wireM } = measured.get(place.line as LineId)!
  if (place.wireM <= wireM + 1e-6) return undefined
  const what = 'sound' in each ? 'The stretch ends at' : 'The meter stands at'
  const message = `${what} ${place.wireM} m of wire, and the line has ${wireM.toFixed(1)} m: give a place on it.`
  return message
}

/** Places where a pair can be opened and measured. */
const tagsOf = (plan: Plan, circuit: Circuit, measured: Measured) =>
  circuit.lines.flatMap((id) =>
    lineTags(plan, measured.get(id)!, plan.lines.get(id)!).map(({ wireM }) => ({ line: id, wireM })),
  )

/** Lines on which each other circuit lies in the same cable, or on a line between the same two stations. */
function besideOf(plan: Plan, circuit: Circuit): ReadonlyMap<string, ReadonlySet<string>> {
  const endsOf = (id: LineId) => {
    const { from, to } = plan.lines.get(id)!
    return [from, to].sort().join('\n')
  }
  const others = [...plan.circuits.values()].filter(({ id }) => id !== circuit.id)
  return new Map(
    others.map(({ id, lines }) => {
      const ends = new Set(lines.map(endsOf))
      return [id, new Set(circuit.lines.filter((line) => ends.has(endsOf(line))))]
    }),
  )
}
