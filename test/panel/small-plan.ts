import type { CircuitId, LineId, StationId } from '../../src/plan/id'
import { DEFAULT_ALLOWANCES, EMPTY_PLAN, type Plan } from '../../src/plan/plan'

export const HUT = 'hut' as StationId
export const FORD = 'ford' as StationId
export const LINE = 'l1' as LineId
export const NET = 'c1' as CircuitId

/** Hut o────────o Ford: about 1.1 km of field wire on the surface in two legs, a crank set at each end. */
export const SMALL_PLAN: Plan = {
  ...EMPTY_PLAN,
  title: 'Two huts',
  allowances: DEFAULT_ALLOWANCES,
  stations: new Map([
    [HUT, { id: HUT, name: 'Hut', note: '', position: [11, 47] }],
    [FORD, { id: FORD, name: 'Ford', note: '', position: [11, 47.01] }],
  ]),
  lines: new Map([
    [
      LINE,
      {
        id: LINE,
        from: HUT,
        to: FORD,
        bends: [[11, 47.005]],
        legs: [{ lay: 'surface' }, { lay: 'overhead' }],
        wire: 'wd-1a',
        pairs: 1,
        return: 'pair',
      },
    ],
  ]),
  circuits: new Map([
    [
      NET,
      {
        id: NET,
        name: 'Camp net',
        lines: [LINE],
        sets: new Map([
          [HUT, 'crank-1000'],
          [FORD, 'crank-1000'],
        ]),
        supply: null,
      },
    ],
  ]),
}
