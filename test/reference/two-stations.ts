import type { CircuitId, LineId, StationId } from '../../src/plan/id'
import { EMPTY_PLAN, type Lay, type Plan } from '../../src/plan/plan'

/** One degree along the equator of WGS 84, m: a π/180. */
const METRES_PER_DEGREE = (6378137 * Math.PI) / 180

export const NO_SLACK: Plan['allowances'] = {
  ...EMPTY_PLAN.allowances,
  slackPct: { surface: 0, overhead: 0, buried: 0, water: 0 },
}

/** Two stations on the equator with one leg of field wire WD-1A/TT between them. A supply stands at the first. */
export function twoStations(given: {
  readonly groundM: number
  readonly lay?: Lay
  /** The same set at both stations. */
  readonly set?: string
  readonly supply?: string | null
  readonly plan?: Partial<Plan>
}): Plan {
  const a = 'a' as StationId
  const b = 'b' as StationId
  const line = 'l' as LineId
  const circuit = 'c' as CircuitId
  const { groundM, lay = 'surface', set, supply } = given
  return {
    ...EMPTY_PLAN,
    ...given.plan,
    stations: new Map([
      [a, { id: a, name: 'A', note: '', position: [0, 0] }],
      [b, { id: b, name: 'B', note: '', position: [groundM / METRES_PER_DEGREE, 0] }],
    ]),
    lines: new Map([
      [
        line,
        { id: line, from: a, to: b, bends: [], legs: [{ lay }], wire: 'wd-1a', pairs: 1, return: 'pair' },
      ],
    ]),
    circuits: new Map(
      set === undefined
        ? []
        : [
            [
              circuit,
              {
                id: circuit,
                name: 'Circuit',
                lines: [line],
                sets: new Map([a, b].map((station) => [station, set])),
                supply: supply ? { type: supply, at: a } : null,
              },
            ],
          ],
    ),
  }
}
