import { isolated } from '../isolated'
import type { LineId } from '../plan/id'
import { EMPTY_PLAN, lineName, type Plan } from '../plan/plan'
import { isSame } from './canonical'
import { type Edit, idOf, LATEST_MS, standing } from './edit'
import { editFault } from './edit-faults'
import { HeldThings, type Ranks } from './held-things'
import { keyOf, placeOf } from './keys'
import { shownValue } from './members'
import { mendPlan } from './mend-plan'
import { Step } from './step'
import { KINDS } from './things'

/** One property that several hands set unseen of each other. */
export interface TornRegister {
  readonly key: string
  /** What each set, the one that holds first; an edit without a value took it away. */
  readonly edits: readonly Edit[]
}

export interface MendedPlan {
  readonly plan: Plan
  /** What was mended, and what stayed though one hand took it out; sentences. */
  readonly mended: readonly string[]
}

/** What became of edits that came in. */
export interface Taken {
  /** Keys of the registers that now say something else. */
  readonly changed: ReadonlySet<string>
  /** Edits that were new, in the order in which they were put in. */
  readonly added: readonly Edit[]
  /** Why edits were refused, a sentence for each hand. */
  readonly refused: readonly string[]
}

/** So many edits may wait for others that they build on: beyond, a hand makes them up. */
const MOST_WAITING = 20_000
/**
 * What many hands did to one plan that they all began with. Whoever has the same edits has the same plan, in whatever order they came.
 */
export class Journal {
  /** By which journals of one plan know each other. */
  readonly id: string
  readonly things: HeldThings
  readonly #seen = new Map<string, number>()
  readonly #waiting = new Map<string, Map<number, Edit>>()
  #waitingCount = 0
  #tick = 0
  #mended: MendedPlan | null = null

  constructor(id: string, plan: Plan, ranks?: Ranks) {
    this.id = id
    this.things = new HeldThings(plan, ranks)
  }

  /** How many edits of each hand are in. */
  get seen(): ReadonlyMap<string, number> {
    return this.#seen
  }

  has(id: string): boolean {
    const colon = id.lastIndexOf(':')
    return Number(id.slice(colon + 1)) <= (this.#seen.get(id.slice(0, colon)) ?? 0)
  }

  /**
   * Writes what leads from one plan to the next as the edits of one step.
   *
   * @param from the plan that was edited: what these edits make, mended
   */
  write(hand: string, from: Plan, next: Plan, clockMs: number): readonly Edit[] {
    const edits: Edit[] = []
    const step = this.#step(hand, clockMs, edits)
    for (const kind of Object.keys(KINDS)) {
      const listed = KINDS[kind]!.list(from)
      const after = KINDS[kind]!.list(next)
      if (listed !== after) step.kind(kind, new Map(listed), new Map(after))
    }
    edits.forEach((edit, at) => {
      if (at + 1 < edits.length) (edit as { left?: number }).left = edits.length - 1 - at
    })
    this.#refresh(edits)
    return edits
  }

  /** Writes one register as it is chosen, in the place of all that stands there. */
  choose(hand: string, key: string, value: unknown, clockMs: number): readonly Edit[] {
    const edits: Edit[] = []
    this.#step(hand, clockMs, edits).set(key, value)
    this.#refresh(edits)
    return edits
  }

  #step(hand: string, clockMs: number, edits: Edit[]): Step {
    this.#tick = Math.min(Math.max(Math.floor(clockMs), this.#tick + 1), LATEST_MS)
    const at = this.#tick
    return new Step(this.things, (key, over, value, was) => {
      const number = (this.#seen.get(hand) ?? 0) + 1
      const some = { ...(value !== undefined && { value }), ...(was !== undefined && { was }) }
      const edit: Edit = { hand, number, at, key, over, ...some }
      this.things.put(edit)
      this.#seen.set(hand, number)
      edits.push(edit)
    })
  }

  /** Takes edits of other hands, whatever their order. Those that are known do nothing; those that build on others wait for these. */
  take(edits: readonly Edit[]): Taken {
    const refused = new Map<string, string>()
    for (const edit of edits) {
      const fault = editFault(edit)
      if (fault) refused.set(edit.hand, `${fault} It was left out.`)
      else if (edit.number > (this.#seen.get(edit.hand) ?? 0) && !this.#wait(edit))
        refused.set(edit.hand, 'Edits came in that build on others which nobody has: they were left out.')
    }
    const added: Edit[] = []
    for (let count = -1; count !== added.length; ) {
      count = added.length
      for (const hand of this.#waiting.keys()) this.#putReady(hand, added)
    }
    this.#refresh(added)
    const changed = new Set(added.map(({ key }) => key))
    return { changed, added, refused: [...refused.values()] }
  }

  #wait(edit: Edit): boolean {
    if (this.#waitingCount >= MOST_WAITING) return false
    const own = this.#waiting.get(edit.hand) ?? new Map<number, Edit>()
    this.#waiting.set(edit.hand, own)
    if (own.has(edit.number)) return true
    own.set(edit.number, edit)
    this.#waitingCount += 1
    return true
  }

  #putReady(hand: string, added: Edit[]): void {
    const own = this.#waiting.get(hand)!
    for (;;) {
      const first = (this.#seen.get(hand) ?? 0) + 1
      const last = first + (own.get(first)?.left ?? 0)
      const step: Edit[] = []
      for (let number = first; number <= last; number++)
        step.push(...(own.has(number) ? [own.get(number)!] : []))
      const ids = new Set(step.map(idOf))
      const isReady = step.every(({ over }) => over.every((id) => this.has(id) || ids.has(id)))
      if (step.length !== last - first + 1 || !isReady) break
      for (const edit of step) this.#put(edit, added)
      for (const { number } of step) own.delete(number)
      this.#waitingCount -= step.length
    }
    if (own.size === 0) this.#waiting.delete(hand)
  }

  /** Counts the edits of others as in, where what stands after them was put in another way, and gathers what they stand in anew. */
  saw(seen: ReadonlyMap<string, number>, standing: readonly Edit[]): void {
    for (const [hand, number] of seen) {
      if (number > (this.#seen.get(hand) ?? 0)) this.#seen.set(hand, number)
      const own = this.#waiting.get(hand)
      for (const waiting of own?.keys() ?? [])
        if (waiting <= number && own!.delete(waiting)) this.#waitingCount -= 1
    }
    this.#tick = standing.reduce((latest, { at }) => Math.max(latest, at), this.#tick)
    this.#refresh(standing)
  }

  #put(edit: Edit, added: Edit[]): void {
    this.things.put(edit)
    this.#seen.set(edit.hand, edit.number)
    this.#tick = Math.max(this.#tick, edit.at)
    added.push(edit)
  }

  #refresh(edits: readonly Edit[]): void {
    if (edits.length > 0) this.#mended = null
    const done = new Set<string>()
    for (const { key } of edits) {
      const { kind, id } = placeOf(key)!
      const thing = keyOf(kind, id, '')
      if (!done.has(thing)) this.things.refresh(kind, id)
      done.add(thing)
    }
  }

  /** The plan that all these edits make, mended where they contradict each other. */
  mended(): MendedPlan {
    if (!this.#mended) {
      const { things } = this
      const sources = [things.ghosts(), things.oldEnds(), EMPTY_PLAN]
      const { plan, mended } = mendPlan(things.plan(), sources)
      const stayed = [...things.stayed()].map(
        ([kind, id]) =>
          `${thingName(plan, kind, id)} was taken out by one and changed by the other; it stays.`,
      )
      this.#mended = { plan, mended: [...stayed.sort(), ...mended] }
    }
    return this.#mended
  }

  /** What several hands set differently and nobody has chosen yet. */
  torn(): readonly TornRegister[] {
    return [...this.things.torn()].sort().flatMap((key) => {
      const { kind, id, member } = placeOf(key)!
      const edits = this.things.edits(key)
      const isTold = member !== '' && this.things.isThere(kind, id)
      const holding = standing(edits)
      const isOne = ({ value }: Edit) => isSame(shownValue(member, value), shownValue(member, holding?.value))
      if (!isTold || !holding || edits.every(isOne)) return []
      return [{ key, edits: [holding, ...edits.filter((each) => each !== holding)] }]
    })
  }
}

/** What a person calls a thing: its name, else the place. */
function thingName(plan: Plan, kind: string, id: string): string {
  const line = kind === 'lines' ? plan.lines.get(id as LineId) : undefined
  if (line) return lineName(plan, line)
  const things = kind === 'stations' || kind === 'hazards' || kind === 'circuits' ? plan[kind] : undefined
  const name = (things as ReadonlyMap<string, { readonly name: string }> | undefined)?.get(id)?.name
  return isolated(name || `${kind}/${id}`)
}
