import type { Position } from '../../src/geo/position'
import type { HazardId, LineId, StationId } from '../../src/plan/id'
import { EMPTY_PLAN, type HazardKind, type Lay, type Line, type Plan } from '../../src/plan/plan'
import { place } from './made-ground'

export type Metres = readonly [eastM: number, northM: number]

export const at = ([eastM, northM]: Metres): Position => place(eastM, northM)

/** A plan with one line through places given in metres, and hazards along others. A last place equal to the first closes an area. */
export function planOf(
  line: readonly Metres[],
  lays: readonly Lay[],
  hazards: readonly { readonly kind: HazardKind; readonly path: readonly Metres[] }[] = [],
): { plan: Plan; line: Line } {
  const [from, to] = ['a', 'b'] as unknown as [StationId, StationId]
  const made: Line = {
    id: 'l' as LineId,
    from,
    to,
    bends: line.slice(1, -1).map(at),
    legs: lays.map((lay) => ({ lay })),
    wire: 'wd-1',
    pairs: 1,
    return: 'pair',
  }
  const station = (id: StationId, name: string, position: Position) =>
    [id, { id, name, note: '', position }] as const
  const plan: Plan = {
    ...EMPTY_PLAN,
    stations: new Map([station(from, 'Ash', at(line[0]!)), station(to, 'Birch', at(line.at(-1)!))]),
    lines: new Map([[made.id, made]]),
    hazards: new Map(
      hazards.map(({ kind, path }, i) => {
        const id = `h${i}` as HazardId
        const coordinates = path.map(at)
        const closed = path.length > 3 && path[0]!.join() === path.at(-1)!.join()
        const geometry = closed
          ? { type: 'Polygon' as const, coordinates: [coordinates] }
          : { type: 'LineString' as const, coordinates }
        return [id, { id, hazard: kind, name: `${kind} ${i}`, geometry }]
      }),
    ),
  }
  return { plan, line: made }
}
