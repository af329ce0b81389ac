import { computed, signal } from '@preact/signals'
import { formatPlan } from '../files/format-plan'
import type { Edit } from '../journal/edit'
import type { Journal } from '../journal/journal'
import { stateOf } from '../journal/journal-state'
import { placeOf } from '../journal/keys'
import type { Plan } from '../plan/plan'
import { journalIn } from './journal-in'
import type { LoggedStep } from './sharing'

/** So many steps are shown; all of them can be gone back over. */
const MOST_SHOWN = 200
/** So many edits are held; those before them become one with the plan that they lead from. */
const MOST_HELD = 20_000

interface Step {
  readonly hand: string
  readonly atMs: number
  readonly edits: Edit[]
}

/** Who changed what, in the order of their clocks, from a plan on. */
export class EditLog {
  #base: { readonly plan: string; readonly state: string }
  readonly #most: number
  /** In the order of their clocks. */
  #steps: Step[] = []
  #byId = new Map<string, Step>()
  #count = 0
  readonly #version = signal(0)
  readonly #nameOf: (hand: string) => string

  /** @param begun the journal as it is before the first edit that will be added */
  constructor(begun: Journal, nameOf: (hand: string) => string, most = MOST_HELD) {
    this.#base = keptOf(begun)
    this.#nameOf = nameOf
    this.#most = most
  }

  add(edits: readonly Edit[]): void {
    for (const edit of edits) {
      const id = `${edit.hand} ${edit.at}`
      const known = this.#byId.get(id)
      if (known) known.edits.push(edit)
      else {
        const step: Step = { hand: edit.hand, atMs: edit.at, edits: [edit] }
        this.#byId.set(id, step)
        let at = this.#steps.length
        while (at > 0 && this.#steps[at - 1]!.atMs > step.atMs) at--
        this.#steps.splice(at, 0, step)
      }
    }
    this.#count += edits.length
    if (this.#count > this.#most) this.#foldOld()
    if (edits.length > 0) this.#version.value += 1
  }

  /** The last steps, the latest first; made when somebody looks. */
  readonly steps = computed((): readonly LoggedStep[] => {
    this.#version.value
    return this.#steps
      .slice(-MOST_SHOWN)
      .reverse()
      .map(({ hand, atMs, edits }) => ({ who: this.#nameOf(hand), atMs, ...doneBy(edits) }))
  })

  /** The plan as it was after a step: all that any hand had done by then. */
  planAt({ atMs }: LoggedStep): Plan {
    return this.#journalAt(this.#steps.filter((step) => step.atMs <= atMs)).mended().plan
  }

  #journalAt(steps: readonly Step[]): Journal {
    const journal = journalIn({ plan: this.#base.plan, state: JSON.parse(this.#base.state) })
    if (!journal) throw new Error('the log begins with no journal')
    journal.take(steps.flatMap(({ edits }) => edits))
    return journal
  }

  #foldOld(): void {
    const old = this.#steps.slice(0, this.#steps.length >> 1)
    this.#base = keptOf(this.#journalAt(old))
    this.#steps = this.#steps.slice(old.length)
    this.#byId = new Map(this.#steps.map((step) => [`${step.hand} ${step.atMs}`, step]))
    this.#count = this.#steps.reduce((sum, { edits }) => sum + edits.length, 0)
  }
}

/** A thing that is put in comes with its members; a mark alone only says where it stands in its list. */
function doneBy(edits: readonly Edit[]): Pick<LoggedStep, 'keys' | 'made' | 'gone'> {
  const keys = edits.map(({ key }) => key)
  const marks = edits.filter(({ key }) => placeOf(key)?.member === '')
  const hasMembers = (mark: string) => keys.some((key) => key !== mark && key.startsWith(mark))
  return {
    keys,
    made: marks.flatMap(({ key, value }) => (value !== undefined && hasMembers(key) ? [key] : [])),
    gone: marks.flatMap(({ key, value }) => (value === undefined ? [key] : [])),
  }
}

const keptOf = (journal: Journal) => ({
  plan: formatPlan(journal.mended().plan),
  state: JSON.stringify(stateOf(journal)),
})
