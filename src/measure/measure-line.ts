import { legGeometry } from '../geo/leg-length'
import type { Position } from '../geo/position'
import { memoryOfEach, memoryOfRow } from '../memo'
import type { LineId } from '../plan/id'
import { byLine, lineRowOf } from '../plan/line-row'
import { type Allowances, endsOf, type Leg, type Line, type Plan, verticesOf } from '../plan/plan'
import type { Ground } from '../terrain/ground'
import type { MeasuredLeg, MeasuredLine } from './measured'
import { sagFactor } from './sag-factor'

/** What a line's measure rests on besides its course. */
interface Basis {
  readonly allowances: Allowances
  readonly ground: Ground | undefined
}

const remembered = memoryOfEach<Line, MeasuredLine>()

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
  const { allowances } = plan
  const [from, to] = endsOf(plan, line)
  return remembered(line, [from, to, allowances, ground], () => measure(plan, line, { allowances, ground }))
}

function measure(plan: Plan, line: Line, basis: Basis): MeasuredLine {
  const vertices = verticesOf(plan, line)
  const legs = line.legs.map((leg, i) => measureLeg(leg, vertices[i]!, vertices[i + 1]!, basis))
  const sum = (length: (leg: MeasuredLeg) => number) => legs.reduce((total, leg) => total + length(leg), 0)
  const laidM = sum((leg) => leg.laidM)
  return {
    id: line.id,
    mapM: sum((leg) => leg.mapM),
    groundM: sum((leg) => leg.groundM),
    laidM,
    wireM: laidM + 2 * basis.allowances.tailM,
    legs,
  }
}

const rememberedRow = memoryOfRow<Line, MeasuredLine>()

/** Every line of the plan, measured. */
export function measurePlan(plan: Plan, ground?: Ground): ReadonlyMap<LineId, MeasuredLine> {
  const { lines, starts, ends } = lineRowOf(plan)
  const row = rememberedRow(lines, [plan.allowances, ground], [starts, ends], (line) =>
    measureLine(plan, line, ground),
  )
  return byLine(lines, row)
}
