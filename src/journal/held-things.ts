import type { StationId } from '../plan/id'
import { EMPTY_PLAN, type Plan } from '../plan/plan'
import { isSame } from './canonical'
import { born, type Edit, idOf, isBorn, later, standing } from './edit'
import { keyOf, placeOf } from './keys'
import type { Members } from './members'
import { inRankOrder } from './ranks'
import { KINDS, planOfThings } from './things'

/** A thing with the edits that stand in each of its registers: nearly always one. */
interface Held {
  /** Null until it is first edited: then it is as the journal found it. */
  registers: Map<string, readonly Edit[]> | null
  /** Undefined where it is taken out, or its registers make no whole thing. */
  thing: unknown
  rank: number
  /** As it would be had nobody taken out anything of it. */
  ghost: unknown
}

export type Ranks = Readonly<Record<string, readonly number[] | undefined>>

/** The things of a plan as registers that keep every edit that nobody has overwritten. */
export class HeldThings {
  readonly #kinds: ReadonlyMap<string, Map<string, Held>>
  /** By kind what is there, in order. */
  readonly #there = new Map<string, ReadonlyMap<string, unknown>>()
  readonly #ghosts = new Map<string, ReadonlyMap<string, unknown>>()
  readonly #torn = new Set<string>()

  /** @param ranks of the things of a kind in their order, where they are not counted from 1 */
  constructor(plan: Plan, ranks: Ranks = {}) {
    this.#kinds = new Map(
      Object.entries(KINDS).map(([kind, { list }]) => [
        kind,
        new Map(
          [...list(plan)].map(([id, thing], at) => [
            id,
            { registers: null, thing, rank: ranks[kind]?.[at] ?? at + 1, ghost: thing },
          ]),
        ),
      ]),
    )
  }

  #registers(kind: string, id: string, held: Held): Map<string, readonly Edit[]> {
    held.registers ??= new Map([
      ['', [born(keyOf(kind, id, ''), held.rank)]],
      ...[...KINDS[kind]!.spread(held.thing as never, new Map())].map(
        ([member, value]) => [member, [born(keyOf(kind, id, member), value)]] as const,
      ),
    ])
    return held.registers
  }

  /** Every register of a thing with the edits that stand there; none for what was never there. */
  registersOf(kind: string, id: string): ReadonlyMap<string, readonly Edit[]> {
    const held = this.#kinds.get(kind)?.get(id)
    return held ? this.#registers(kind, id, held) : new Map()
  }

  /** What the registers of a thing say, also where it is taken out. */
  membersOf(kind: string, id: string): Members {
    const members = new Map<string, unknown>()
    for (const [member, edits] of this.registersOf(kind, id)) {
      const value = standing(edits)?.value
      if (value !== undefined && member !== '') members.set(member, value)
    }
    return members
  }

  edits(key: string): readonly Edit[] {
    const place = placeOf(key)
    return (place && this.registersOf(place.kind, place.id).get(place.member)) ?? []
  }

  rankOf = (kind: string, id: string): number | undefined => this.#kinds.get(kind)?.get(id)?.rank

  /** Puts what stands in a register. The thing is not gathered anew until {@link refresh}. */
  set(key: string, edits: readonly Edit[]): void {
    const { kind, id, member } = placeOf(key)!
    const things = this.#kinds.get(kind)!
    const held = things.get(id) ?? { registers: new Map(), thing: undefined, rank: 0, ghost: undefined }
    things.set(id, held)
    this.#registers(kind, id, held).set(member, edits)
    if (edits.length > 1) this.#torn.add(key)
    else this.#torn.delete(key)
  }

  /** Puts an edit into its register, in the place of all that it overwrote. */
  put(edit: Edit): void {
    const over = new Set(edit.over)
    const left = this.edits(edit.key).filter((each) => !isBorn(each) && !over.has(idOf(each)))
    this.set(edit.key, [...left, edit])
  }

  /** Gathers a thing anew from its registers. */
  refresh(kind: string, id: string): void {
    const held = this.#kinds.get(kind)?.get(id)
    if (!held?.registers) return
    const { isThere, rank } = standingOf(held.registers)
    const members = this.membersOf(kind, id)
    const gathered = KINDS[kind]!.gather(members, id)
    held.thing = isThere ? gathered : undefined
    held.rank = rank
    const lost = [...held.registers].flatMap(([member, edits]) => {
      const isLost = member !== '' && !members.has(member) && edits.length > 0
      const was = isLost ? edits.reduce(later).was : undefined
      return was === undefined ? [] : [[member, was] as const]
    })
    held.ghost = lost.length > 0 ? KINDS[kind]!.gather(new Map([...members, ...lost]), id) : gathered
    this.#there.delete(kind)
    this.#ghosts.delete(kind)
  }

  there(kind: string): ReadonlyMap<string, unknown> {
    const known = this.#there.get(kind)
    if (known) return known
    const made = this.#inOrder(kind, ({ thing }) => thing)
    if (kind === 'field') this.#tellRecordsApart(made)
    this.#there.set(kind, made)
    return made
  }

  #inOrder(kind: string, pick: (held: Held) => unknown): Map<string, unknown> {
    const found = [...this.#kinds.get(kind)!].filter(([, held]) => pick(held) !== undefined)
    found.sort(([a, { rank: first }], [b, { rank: second }]) => inRankOrder([a, first], [b, second]))
    return new Map(found.map(([id, held]) => [id, pick(held)]))
  }

  /** Two hands may have given one id to two records: none of them is lost. */
  #tellRecordsApart(records: Map<string, unknown>): void {
    for (const key of this.#torn) {
      const { kind, id, member } = placeOf(key)!
      if (kind !== 'field' || member !== 'record' || !records.has(id)) continue
      const made = this.edits(key).filter(({ over, value }) => over.length === 0 && value !== undefined)
      const [, ...others] = made.toSorted((a, b) => (later(a, b) === a ? -1 : 1))
      for (const { hand, value } of others)
        if (!isSame(value, records.get(id)))
          records.set(`${id}-${hand}`, { ...(value as object), id: `${id}-${hand}` })
    }
  }

  /** The plan that the registers tell of, with all contradictions that are in it. */
  plan(): Plan {
    return planOfThings((kind) => this.there(kind))
  }

  /** All that there ever was, as far as it is still known: where something is used that was taken out, it comes back from here. */
  ghosts(): Plan {
    return planOfThings((kind) => {
      const known = this.#ghosts.get(kind)
      if (known) return known
      const made = this.#inOrder(kind, ({ ghost }) => ghost)
      this.#ghosts.set(kind, made)
      return made
    })
  }

  /** Lines that begin where they end, as they were before both ends were led there. */
  oldEnds(): Plan {
    const loops = [...(this.there('lines') as Plan['lines']).values()].filter(({ from, to }) => from === to)
    const before = loops.map((line) => {
      const [from, to] = ['from', 'to'].map((end) => standing(this.edits(keyOf('lines', line.id, end)))?.was)
      return { ...line, from: (from ?? line.from) as StationId, to: (to ?? line.to) as StationId }
    })
    return { ...EMPTY_PLAN, lines: new Map(before.map((line) => [line.id, line])) }
  }

  /** Keys of the registers in which more than one edit stands. */
  torn(): Iterable<string> {
    return this.#torn
  }

  /** Every register of a thing that somebody has edited, with the edits that stand there. */
  *edited(): Generator<readonly [key: string, edits: readonly Edit[]]> {
    for (const [kind, things] of this.#kinds)
      for (const [id, { registers }] of things) {
        if (!registers || [...registers.values()].every((edits) => edits.every(isBorn))) continue
        for (const [member, edits] of registers) yield [keyOf(kind, id, member), edits]
      }
  }

  /** Things that are there though somebody took them out. */
  *stayed(): Generator<readonly [kind: string, id: string]> {
    for (const [kind, things] of this.#kinds)
      for (const [id, { registers, thing }] of things)
        if (thing !== undefined && registers && !standing(registers.get(''))) yield [kind, id]
  }

  /** Things that were taken out, and are still known. */
  gone(): readonly (readonly [kind: string, id: string])[] {
    return [...this.#kinds].flatMap(([kind, things]) =>
      [...things].flatMap(([id, { registers, thing }]) =>
        thing === undefined && registers?.get('')?.length ? [[kind, id] as const] : [],
      ),
    )
  }

  forget(kind: string, id: string): void {
    for (const member of this.registersOf(kind, id).keys()) this.#torn.delete(keyOf(kind, id, member))
    this.#kinds.get(kind)!.delete(id)
    this.#ghosts.delete(kind)
  }

  isThere = (kind: string, id: string): boolean => this.#kinds.get(kind)?.get(id)?.thing !== undefined
}

/** Whether a thing is there: it is not where whoever took it out had seen all that others have set of it. */
function standingOf(registers: ReadonlyMap<string, readonly Edit[]>): {
  readonly isThere: boolean
  readonly rank: number
} {
  const marks = registers.get('') ?? []
  const alive = standing(marks)
  if (alive) return { isThere: true, rank: alive.value as number }
  if (marks.length === 0) return { isThere: false, rank: 0 }
  const seen = new Set(marks.flatMap(({ over }) => over))
  const isChanged = [...registers].some(
    ([member, edits]) => member !== '' && edits.some((each) => !isBorn(each) && !seen.has(idOf(each))),
  )
  return { isThere: isChanged, rank: marks.reduce(later).was as number }
}
