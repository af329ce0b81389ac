import type { Direction } from '../hazard/crossing-notes'
import { HAZARDS } from '../hazard/kinds'
import { pointAtMapM, wireMAtGroundM, wireMOnLeg } from '../measure/place-on-line'
import type { HazardKind, Line, Plan } from '../plan/plan'
import type { ReportLine } from './report'

/** What one comes to on a line. */
export type WalkMark = { readonly groundM: number; readonly wireM: number } & (
  | { readonly code: 'bend'; readonly number: number; readonly turnDeg: number; readonly bearingDeg: number }
  | {
      readonly code: 'crossing'
      readonly kind: HazardKind
      readonly name: string
      readonly does: Direction | undefined
    }
  | { readonly code: 'tag'; readonly number: number; readonly isTestPoint: boolean }
  /** One spool ends, and the next is spliced on. */
  | { readonly code: 'splice'; readonly spools: readonly [string, string] }
  | { readonly code: 'end'; readonly station: string }
)

/** To which of its ends a line is walked. */
export type Toward = 'to' | 'from'

/**
 * All that one comes to on a line, in the order in which one comes to it; places count from its `from` either way. Bearings are true; a turn to
 * the right is positive, °.
 */
export function walkMarks(
  plan: Plan,
  line: Line,
  measured: ReportLine,
  toward: Toward = 'to',
): readonly WalkMark[] {
  const marks = marksOn(plan, line, measured)
  if (toward === 'to') return marks
  const back = marks.map((mark) => comeUpon(mark, line, measured))
  return back.toSorted((a, b) => b.groundM - a.groundM || Number(a.code === 'end') - Number(b.code === 'end'))
}

/** A mark as one meets it who comes from the far end. */
function comeUpon(mark: WalkMark, line: Line, { legs }: ReportLine): WalkMark {
  switch (mark.code) {
    case 'bend': {
      const bearingDeg = (legs[mark.number - 1]!.bearingDeg + 180) % 360
      return { ...mark, bearingDeg, turnDeg: -mark.turnDeg }
    }
    case 'splice':
      return { ...mark, spools: [mark.spools[1], mark.spools[0]] }
    case 'end':
      return { ...mark, station: line.from, groundM: 0, wireM: 0 }
    default:
      return mark
  }
}

function marksOn(plan: Plan, line: Line, measured: ReportLine): readonly WalkMark[] {
  const { legs, crossings, tags, splices, groundM, wireM } = measured
  let runM = 0
  const bends = legs.slice(0, -1).map((leg, i): WalkMark => {
    runM += leg.groundM
    const { bearingDeg } = legs[i + 1]!
    const turnDeg = ((bearingDeg - leg.bearingDeg + 540) % 360) - 180
    const place = { groundM: runM, wireM: wireMOnLeg(measured, i + 1, 0) }
    return { code: 'bend', number: i + 1, turnDeg, bearingDeg, ...place }
  })
  const crossed = crossings.map(({ kind, lay, name, distanceM }): WalkMark => {
    const at = pointAtMapM(plan, measured, line, distanceM).groundM
    const place = { groundM: at, wireM: wireMAtGroundM(measured, at) }
    return { code: 'crossing', kind, name, does: HAZARDS[kind].at[lay].does, ...place }
  })
  return [
    ...bends,
    ...crossed,
    ...tags.map(
      ({ number, isTestPoint, ...tag }): WalkMark => ({
        ...{ code: 'tag', number, isTestPoint },
        ...{ groundM: tag.groundM, wireM: tag.wireM },
      }),
    ),
    ...splices.map(
      ([splice]): WalkMark => ({
        ...{ code: 'splice', spools: splice.spools },
        ...{ groundM: splice.groundM, wireM: splice.wireM },
      }),
    ),
    { code: 'end', station: line.to, groundM, wireM } satisfies WalkMark,
  ].toSorted((a, b) => a.groundM - b.groundM)
}
