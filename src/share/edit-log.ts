import type { Edit } from '../journal/edit'
import type { Journal } from '../journal/journal'
import type { Plan } from '../plan/plan'
import type { LoggedStep } from './sharing'

/** So many steps are shown; all of them can be gone back over. */
const MOST_SHOWN = 200

/** Who changed what, in the order of their clocks, from a plan on. */
export class EditLog {
  readonly #base: () => Journal
  readonly #edits: Edit[] = []

  /** @param base the journal as it was before the first of these edits, made anew each time */
  constructor(base: () => Journal) {
    this.#base = base
  }

  add(edits: readonly Edit[]): void {
    this.#edits.push(...edits)
  }

  /** The last steps, the latest first. */
  steps(nameOf: (hand: string) => string): readonly LoggedStep[] {
    const found = new Map<string, { who: string; atMs: number; keys: string[] }>()
    for (const { hand, at, key } of this.#edits) {
      const id = `${hand} ${at}`
      const step = found.get(id) ?? { who: nameOf(hand), atMs: at, keys: [] }
      found.set(id, step)
      step.keys.push(key)
    }
    return [...found.values()].sort((a, b) => b.atMs - a.atMs).slice(0, MOST_SHOWN)
  }

  /** The plan as it was after a step: all that any hand had done by then. */
  planAt({ atMs }: LoggedStep): Plan {
    const journal = this.#base()
    journal.take(this.#edits.filter(({ at }) => at <= atMs))
    return journal.mended().plan
  }
}
