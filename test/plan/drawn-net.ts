import type { Position } from '../../src/geo/position'
import type { CircuitId, LineId, StationId } from '../../src/plan/id'
import { addLine } from '../../src/plan/line-edits'
import { EMPTY_PLAN, type Plan } from '../../src/plan/plan'
import { addStation } from '../../src/plan/station-edits'
import type { Result } from '../../src/problem'

export const s = (id: string) => id as StationId
export const l = (id: string) => id as LineId
export const c = (id: string) => id as CircuitId

/** Draws one line between stations named by a letter each: `ab` from a to b, starting circuit `c-ab` if it joins none. */
export const drawLine = (plan: Plan, name: string, bends: readonly Position[] = []): Plan =>
  addLine(plan, {
    id: l(name),
    newCircuitId: c(`c-${name}`),
    from: s(name[0]!),
    to: s(name[1]!),
    bends,
    wire: 'wd-1a',
    lay: 'surface',
  })

/** Stations a to f in a row, 0.01° apart, and these lines drawn between them one after the other. */
export function drawnNet(...lines: readonly string[]): Plan {
  const row = [...'abcdef'].reduce(
    (plan, id, index) =>
      addStation(plan, { id: s(id), name: id.toUpperCase(), position: [10 + index / 100, 50] }),
    EMPTY_PLAN,
  )
  return lines.reduce((plan, name) => drawLine(plan, name), row)
}

/** The circuits of a plan, each as its id and its lines: `c-ab: ab bc`. */
export const circuitsIn = (plan: Plan): readonly string[] =>
  [...plan.circuits.values()].map(({ id, lines }) => `${id}: ${lines.join(' ')}`)

export function mended(result: Result<Plan>): Plan {
  if (!result.ok) throw new Error(result.problems.map((problem) => problem.message).join(' '))
  return result.value
}

export const refusals = (result: Result<Plan>): readonly string[] =>
  result.ok ? [] : result.problems.map((problem) => problem.message)
