import { RANK } from '../budget/verdict'
import { measurePlan } from '../measure/measure-line'
import { pointAtGroundM } from '../measure/place-on-line'
import { type NewIds, standAt } from '../measure/stand-at'
import { setSet, setSupply } from '../plan/circuit-edits'
import { stationsOfCircuit } from '../plan/circuit-topology'
import type { CircuitId, LineId, StationId } from '../plan/id'
import type { Place } from '../plan/place'
import type { Plan } from '../plan/plan'
import { withCircuit, withLine } from '../plan/with-feature'
import type { Ground } from '../terrain/ground'
import { learnedOf } from './learned-of'
import { sparePct } from './remedy-ranking'
import { type Lengths, type Standing, standing } from './remedy-trials'

/** What is to be put somewhere on a circuit: a supply, or the joint from which a line leads to one station more. */
export type Thing =
  | { readonly kind: 'supply'; readonly type: string }
  | { readonly kind: 'tap'; readonly to: StationId; readonly set: string; readonly wire: string }

/** At a station of the circuit, or on the wire of one of its lines. */
export type Spot = Exclude<Place, { kind: 'ground' }>

export interface SpotFound {
  readonly spot: Spot
  /** On the wire: so far along the ground from the station where the line begins, m. */
  readonly groundM?: number
  readonly from?: StationId
  readonly verdict: Standing['verdict']
  readonly worst: Standing['worst']
  /** What the tightest check has to spare, % of the least; below 0 it fails. */
  readonly marginPct: number
  readonly worstMarginPct: number
  /** Wire that it takes more than the circuit has now, m. */
  readonly extraM: number
}

/** Ids that are taken by what comes to stand there. */
export interface SpotIds extends NewIds {
  readonly line: LineId
}

/** The plan with a thing put somewhere on a circuit. */
export function putThing(plan: Plan, id: CircuitId, thing: Thing, spot: Spot, ids: SpotIds): Plan {
  const { plan: stood, station } = standAt(plan, spot, ids)
  if (thing.kind === 'supply') return setSupply(stood, id, { type: thing.type, at: station })
  const circuit = stood.circuits.get(id)
  if (!circuit || station === thing.to) return plan
  const drawn = withLine(stood, {
    ...{ id: ids.line, from: station, to: thing.to, bends: [], wire: thing.wire },
    ...{ legs: [{ lay: 'surface' }], pairs: 1, return: 'pair' },
  })
  const joined = withCircuit(drawn, { ...circuit, lines: [...circuit.lines, ids.line] })
  return setSet(joined, id, thing.to, thing.set)
}

/** Places looked at on one line at first: no closer than this, m, and so many at the most. */
const STEP_M = 150
const MOST_ON_A_LINE = 8
/** Around the best of each line it is looked between its neighbours, so often. */
const CLOSER = 3
const LISTED = 6
/** What a joint must bring to be worth its making: a hundredth of what there is. */
const WORTH_NEPERS = 0.01

/** A place on a line that was tried. */
interface Tried extends SpotFound {
  readonly nepers: number
  readonly worstNepers: number
}

/**
 * Where on a circuit a thing would leave the widest margin, the best first: at every station, and along every line, closer about what was best
 * there. Each place is tried with the engine.
 */
export function bestPlaces(plan: Plan, id: CircuitId, thing: Thing, ground: Ground | undefined): SpotFound[] {
  const circuit = plan.circuits.get(id)
  if (!circuit) return []
  const measured = measurePlan(plan, ground)
  const wireOf = (lengths: Lengths, lines: readonly LineId[]) =>
    lines.reduce((sum, line) => sum + lengths.get(line)!.wireM, 0)
  const nowM = wireOf(measured, circuit.lines)
  // What was read of the wire that lies there holds wherever a thing is put.
  const learned = learnedOf(plan, measured)
  const tried = (spot: Spot, groundM?: number): Tried => {
    const put = putThing(plan, id, thing, spot, TRIAL_IDS)
    const lengths = measurePlan(put, ground)
    const { verdict, worst, today, worstNepers } = standing(put, [id], lengths, learned)
    return {
      ...{ spot, verdict, worst, worstNepers, nepers: today },
      ...(groundM !== undefined &&
        spot.kind === 'wire' && { groundM, from: plan.lines.get(spot.line)!.from }),
      marginPct: sparePct(today),
      worstMarginPct: sparePct(worstNepers),
      extraM: wireOf(lengths, put.circuits.get(id)!.lines) - nowM,
    }
  }
  const atStations = stationsOfCircuit(plan, circuit)
    .filter((station) => thing.kind === 'supply' || station !== thing.to)
    .map((station) => tried({ kind: 'station', id: station }))
  const onLines = circuit.lines.flatMap((line) => {
    const lineM = measured.get(line)!.groundM
    const count = Math.min(MOST_ON_A_LINE, Math.floor(lineM / STEP_M))
    const at = (groundM: number): Tried => {
      const { legIndex, position } = pointAtGroundM(plan, measured.get(line)!, plan.lines.get(line)!, groundM)
      return tried({ kind: 'wire', line, leg: legIndex, position }, groundM)
    }
    let found = Array.from({ length: count }, (_, k) => at((lineM * (k + 1)) / (count + 1)))
    for (let round = 0, stepM = lineM / (count + 1); round < CLOSER && found.length > 0; round++) {
      stepM /= 2
      const [best] = [...found].sort(byMargin)
      found = [...found, ...[-stepM, stepM].map((aside) => at(best!.groundM! + aside))]
    }
    const ends = atStations.filter(
      ({ spot }) =>
        spot.kind === 'station' && [plan.lines.get(line)!.from, plan.lines.get(line)!.to].includes(spot.id),
    )
    // A place on the wire is worth a joint only where it leaves more than either end does.
    const isBetter = (each: Tried) =>
      ends.every((end) => byMargin(each, { ...end, worstNepers: end.worstNepers + WORTH_NEPERS }) < 0)
    return [...found].sort(byMargin).slice(0, 1).filter(isBetter)
  })
  return [...atStations, ...onLines]
    .sort(byMargin)
    .slice(0, LISTED)
    .map(({ nepers: _, worstNepers: __, ...spot }) => spot)
}

const byMargin = (a: Tried, b: Tried): number =>
  RANK[b.worst] - RANK[a.worst] ||
  RANK[b.verdict] - RANK[a.verdict] ||
  b.worstNepers - a.worstNepers ||
  a.extraM - b.extraM

/** On a trial nothing else is drawn: these are taken by no plan that a person made. */
const TRIAL_IDS: SpotIds = {
  station: 'trial station' as StationId,
  secondHalf: 'trial half' as LineId,
  line: 'trial line' as LineId,
}
