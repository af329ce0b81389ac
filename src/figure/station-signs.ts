import type { StationId } from '../plan/id'
import type { Plan } from '../plan/plan'

/** What stands at a station, as far as its sign tells: two posts, a cross, cords that hang from a bar, a dial. */
export type StationSign = 'telephone' | 'supply' | 'board' | 'exchange'

/** The plate on which a sign stands, in steps of the screen; on paper a step is 0.2 mm. */
export const PLATE = { width: 26, height: 18, rounding: 4 } as const
export const STEP_MM = 0.2

/** Strokes of each sign: where each begins beside the plate's middle, and its relative steps. A step of no length is a dot. */
export const SIGN_STROKES: {
  readonly [S in StationSign]: {
    readonly look: 'dots' | 'strokes'
    readonly from: readonly (readonly [dx: number, dy: number, steps: string])[]
  }
} = {
  telephone: {
    look: 'dots',
    from: [
      [-5, 0, 'h0'],
      [5, 0, 'h0'],
    ],
  },
  supply: {
    look: 'strokes',
    from: [
      [-6, 0, 'h12'],
      [0, -5, 'v10'],
    ],
  },
  board: {
    look: 'strokes',
    from: [
      [-9, -4.5, 'h18'],
      [-6, -4.5, 'v7'],
      [0, -4.5, 'v10'],
      [6, -4.5, 'v7'],
    ],
  },
  exchange: {
    look: 'strokes',
    from: [
      [-5.5, 0, 'a5.5 5.5 0 1 0 11 0a5.5 5.5 0 1 0 -11 0z'],
      [-1.5, 0, 'h3'],
    ],
  },
}

const RANK: readonly StationSign[] = ['supply', 'exchange', 'board']

/** Stations at which something other than a telephone stands, with its sign; of several things that which is found least easily elsewhere. */
export function stationSigns(
  circuits: Plan['circuits'],
  kindOf: (type: string) => string | undefined,
): ReadonlyMap<StationId, StationSign> {
  const signs = new Map<StationId, StationSign>()
  for (const { supply } of circuits.values()) {
    if (!supply) continue
    const kind = kindOf(supply.type)
    const sign = kind === 'board' || kind === 'exchange' ? kind : 'supply'
    const before = signs.get(supply.at)
    if (!before || RANK.indexOf(sign) > RANK.indexOf(before)) signs.set(supply.at, sign)
  }
  return signs
}
