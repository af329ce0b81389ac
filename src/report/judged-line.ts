import type { Wire } from '../catalog/wire'
import type { Crossing } from '../hazard/crossings'
import type { MeasuredLine } from '../measure/measured'
import type { Line, Plan } from '../plan/plan'
import type { Ground } from '../terrain/ground'
import { METRES_PER_FOOT } from '../units'
import type { Caution } from './report'

/** One line with all that its cautions are judged by. */
export interface JudgedLine {
  readonly plan: Plan
  readonly line: Line
  readonly name: string
  readonly measured: MeasuredLine
  readonly wire: Wire | undefined
  readonly ground: Ground | undefined
}

/** The last word of every caution about a rule. */
export const LOCAL_CODE = 'The local code governs.'

/** `5.5 m (18 ft)`: a handbook's figure, both ways. */
export const metresAndFeet = (m: number): string =>
  `${Number(m.toFixed(1))} m (${Number((m / METRES_PER_FOOT).toFixed(1))} ft)`

/** A caution about a crossing: `Camp – Ford meets County road 420 m out`, then what is the matter. */
export function cautionAt(
  { line, name }: JudgedLine,
  { name: hazard, kind, position, legIndex, distanceM }: Crossing,
  code: string,
  text: string,
  source: string,
): Caution {
  const what = hazard || `a ${kind.replace('-', ' ')}`
  return {
    code,
    where: line.id,
    text: `${name} meets ${what} ${Math.round(distanceM)} m out${text} ${LOCAL_CODE}`,
    place: { position, legIndex, distanceM },
    source,
  }
}
