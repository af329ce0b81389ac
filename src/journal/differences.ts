import type { Plan } from '../plan/plan'
import { isSame } from './canonical'

const KINDS = ['stations', 'lines', 'circuits', 'hazards'] as const
export type ThingKind = (typeof KINDS)[number]

/** A thing of two plans that is not alike in both: by its id, and what became of it on the way from the first to the second. */
export interface Difference {
  readonly kind: ThingKind
  readonly id: string
  readonly became: 'added' | 'removed' | 'changed'
}

/** What is not alike in two plans; `settings` where anything besides stations, lines, circuits and what is in the way differs. */
export function differences(
  from: Plan,
  to: Plan,
): { readonly things: readonly Difference[]; readonly settings: boolean } {
  const things = KINDS.flatMap((kind) => {
    const [before, after] = [from[kind], to[kind]] as readonly ReadonlyMap<string, unknown>[]
    const ids = new Set([...before!.keys(), ...after!.keys()])
    return [...ids].flatMap((id): readonly Difference[] => {
      if (!before!.has(id)) return [{ kind, id, became: 'added' }]
      if (!after!.has(id)) return [{ kind, id, became: 'removed' }]
      return isSame(before!.get(id), after!.get(id)) ? [] : [{ kind, id, became: 'changed' }]
    })
  })
  return { things, settings: !isSame(settingsOf(from), settingsOf(to)) }
}

function settingsOf({ stations, lines, circuits, hazards, unknown, papers, ...settings }: Plan) {
  return settings
}
