import { type Position, samePosition } from '../geo/position'
import { withRecordsSplit } from './field-split'
import type { LineId, StationId } from './id'
import type { Circuit, Line, Plan } from './plan'
import { addStation } from './station-edits'
import { assertNewFeature, withLine } from './with-feature'

export interface Split {
  readonly line: LineId
  readonly leg: number
  /** The station that comes to stand on the wire. */
  readonly station: { readonly id: StationId; readonly name: string; readonly position: Position }
  /** Id of the second half; the first keeps the line's own. */
  readonly second: LineId
  /** Wire from the line's `from` to the station, m: by it what was recorded beyond goes to the second half. Absent: it stays. */
  readonly jointM?: number
}

/**
 * Puts a station on a line: the line becomes two that are joined there, in every circuit that it carries. Each half is laid as the whole
 * was; the wire of an earth return goes through, so that no electrode stands at the joint.
 */
export function splitLine(plan: Plan, { line: id, leg: at, station, second, jointM }: Split): Plan {
  const line = plan.lines.get(id)
  const cut = line?.legs[at]
  if (!line || !cut) return plan
  assertNewFeature(plan, second)
  const stood = addStation(plan, station)
  const { position } = stood.stations.get(station.id)!
  const [before, after] = [line.bends.slice(0, at), line.bends.slice(at)]
  const [legsBefore, legsAfter] = [line.legs.slice(0, at), line.legs.slice(at + 1)]
  const { note: _, unknown: __, ...secondLeg } = cut
  // On a bend no stub of a leg is left.
  const isOn = (bend: Position | undefined) => bend !== undefined && samePosition(bend, position)
  const [onBendBefore, onBendAfter] = [isOn(before.at(-1)), isOn(after[0])]
  const [ohmsFrom, ohmsTo] = line.electrodeOhms ?? [0, 0]
  const [highFrom, highTo] = line.endElevationsM ?? [null, null]
  const first: Line = {
    ...withoutEnds(line),
    to: station.id,
    bends: onBendBefore ? before.slice(0, -1) : before,
    legs: onBendBefore ? legsBefore : [...legsBefore, cut],
    ...(line.electrodeOhms && { electrodeOhms: [ohmsFrom, 0] }),
    ...(highFrom !== null && { endElevationsM: [highFrom, null] }),
  }
  const { unknown: ___, ...known } = withoutEnds(line)
  const last: Line = {
    ...known,
    id: second,
    from: station.id,
    bends: onBendAfter ? after.slice(1) : after,
    legs: onBendAfter ? legsAfter : [secondLeg, ...legsAfter],
    ...(line.electrodeOhms && { electrodeOhms: [0, ohmsTo] }),
    ...(highTo !== null && { endElevationsM: [null, highTo] }),
  }
  const both = { ...withLine(withLine(stood, first), last), circuits: withBoth(plan, id, second) }
  return jointM === undefined ? both : withRecordsSplit(both, { first: id, second, jointM })
}

function withoutEnds({ electrodeOhms: _, endElevationsM: __, ...line }: Line): Line {
  return line
}

function withBoth(plan: Plan, first: LineId, second: LineId): Plan['circuits'] {
  const both = (circuit: Circuit): Circuit =>
    circuit.lines.includes(first)
      ? { ...circuit, lines: circuit.lines.flatMap((id) => (id === first ? [first, second] : [id])) }
      : circuit
  return new Map([...plan.circuits].map(([id, circuit]) => [id, both(circuit)]))
}
