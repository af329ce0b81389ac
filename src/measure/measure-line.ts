import { legGeometry } from '../geo/leg-length'
import type { Position } from '../geo/position'
import type { LineId } from '../plan/id'
import { type Allowances, type Leg, type Line, type Plan, verticesOf } from '../plan/plan'
import type { Ground } from '../terrain/ground'
import type { MeasuredLeg, MeasuredLine } from './measured'
import { sagFactor } from './sag-factor'

/** What a line's measure rests on besides the line itself. */
interface Basis {
  readonly from: Position
  readonly to: Position
  readonly allowances: Allowances
  readonly ground: Ground | undefined
}

const known = new WeakMap<Line, { readonly basis: Basis; readonly measured: MeasuredLine }>()

function measureLeg(leg: Leg, from: Position, to: Position, basis: Basis): MeasuredLeg {
  const { mapM, bearingDeg } = legGeometry(from, to)
  const alongGroundM = basis.ground?.groundM(from, to, mapM)
  const groundM = alongGroundM ?? mapM
  const { slackPct, sagPct } = basis.allowances
  const slack = 1 + (leg.slackPct ?? slackPct[leg.lay]) / 100
  const sag = leg.lay === 'overhead' ? sagFactor(leg.sagPct ?? sagPct) : 1
  return {
    mapM,
    groundM,
    onGrid: alongGroundM !== undefined,
    laidM: groundM * slack * sag,
    bearingDeg,
    lay: leg.lay,
  }
}

/**
 * Lengths of a line, leg by leg and summed, m: on the map, along the ground, of the wire laid, and of the wire with both tails.
 *
 * laid = Σ ground · (1 + slackPct / 100), for overhead legs also times the sag factor; wire = laid + 2 · tailM.
 * A line that is measured again with nothing changed gives the very same object.
 */
export function measureLine(plan: Plan, line: Line, ground?: Ground): MeasuredLine {
  const vertices = verticesOf(plan, line)
  const from = vertices[0]!
  const to = vertices.at(-1)!
  const { allowances } = plan
  const before = known.get(line)
  if (
    before &&
    before.basis.from === from &&
    before.basis.to === to &&
    before.basis.allowances === allowances &&
    before.basis.ground === ground
  ) {
    return before.measured
  }

  const basis = { from, to, allowances, ground }
  const legs = line.legs.map((leg, i) => measureLeg(leg, vertices[i]!, vertices[i + 1]!, basis))
  const sum = (length: (leg: MeasuredLeg) => number) => legs.reduce((total, leg) => total + length(leg), 0)
  const laidM = sum((leg) => leg.laidM)
  const measured: MeasuredLine = {
    id: line.id,
    mapM: sum((leg) => leg.mapM),
    groundM: sum((leg) => leg.groundM),
    laidM,
    wireM: laidM + 2 * allowances.tailM,
    legs,
  }
  known.set(line, { basis, measured })
  return measured
}

/** Every line of the plan, measured. */
export function measurePlan(plan: Plan, ground?: Ground): ReadonlyMap<LineId, MeasuredLine> {
  const measured = new Map<LineId, MeasuredLine>()
  for (const line of plan.lines.values()) measured.set(line.id, measureLine(plan, line, ground))
  return measured
}
