import { isSame } from './canonical'
import { idOf, isBorn, standing } from './edit'
import type { HeldThings } from './held-things'
import { keyOf, placeOf } from './keys'
import { rankedAs } from './ranks'
import { KINDS } from './things'
import { usedBy } from './used-by'

type Things = ReadonlyMap<string, unknown>
type Add = (key: string, over: readonly string[], value: unknown, was?: unknown) => void

/** Writes, register by register, what one step of a hand changes. */
export class Step {
  readonly #held: HeldThings
  readonly #add: Add

  constructor(held: HeldThings, add: Add) {
    this.#held = held
    this.#add = add
  }

  /** All things of one kind as they were and as they are. */
  kind(kind: string, before: Things, after: Things): void {
    for (const id of before.keys()) if (!after.has(id)) this.#takeOut(kind, id)
    const ranks = this.#ranks(kind, before, after)
    const changed = [...after].filter(([id, thing]) => before.get(id) !== thing)
    for (const [id, thing] of [...changed, ...this.#mendedBeside(kind, changed, before, after)])
      this.#change(kind, id, before.get(id), thing, ranks?.get(id))
    for (const [id, rank] of ranks ?? [])
      if (this.#held.isThere(kind, id) && rank !== this.#held.rankOf(kind, id))
        this.set(keyOf(kind, id, ''), rank)
  }

  /** Ranks of all where something is new or stands elsewhere. */
  #ranks(kind: string, before: Things, after: Things): ReadonlyMap<string, number> | undefined {
    const names = [...after.keys()]
    const stayed = [...before.keys()].filter((id) => after.has(id))
    if (names.length === stayed.length && names.every((id, at) => id === stayed[at])) return undefined
    return rankedAs(names, (id) => (before.has(id) ? this.#held.rankOf(kind, id) : undefined))
  }

  /** A circuit that was mended is one of several pieces: whoever edits one of them takes all as they were mended. */
  #mendedBeside(
    kind: string,
    changed: readonly (readonly [string, unknown])[],
    before: Things,
    after: Things,
  ) {
    if (kind !== 'circuits') return []
    const held = this.#held.there(kind)
    const isMended = (id: string) => before.has(id) && !isSame(before.get(id), held.get(id))
    if (!changed.some(([id]) => isMended(id))) return []
    return [...after].filter(([id, thing]) => before.get(id) === thing && isMended(id))
  }

  #change(kind: string, id: string, old: unknown, thing: unknown, rank: number | undefined): void {
    const { spread } = KINDS[kind]!
    const held = this.#held.membersOf(kind, id)
    const isThere = this.#held.isThere(kind, id)
    if (!isThere) this.set(keyOf(kind, id, ''), rank ?? this.#held.rankOf(kind, id) ?? 1)
    const after = spread(thing as never, held)
    // What was only mended is nobody's edit.
    const before = isThere && old !== undefined && old !== thing ? spread(old as never, held) : held
    for (const [member, value] of after)
      if (!isSame(before.get(member), value) && !isSame(held.get(member), value))
        this.set(keyOf(kind, id, member), value)
    for (const member of held.keys())
      if (before.has(member) && !after.has(member)) this.set(keyOf(kind, id, member), undefined)
  }

  /** One register, in the place of all that stands there. */
  set(key: string, value: unknown): void {
    const { kind, member } = placeOf(key)!
    const before = this.#held.edits(key)
    const was = standing(before)?.value
    const isEnd = kind === 'lines' && (member === 'from' || member === 'to')
    const mayReturn = kind === 'circuits' && member.startsWith('lines/') && value === undefined
    this.#put(key, before, value, isEnd || mayReturn ? was : undefined)
  }

  #takeOut(kind: string, id: string): void {
    if (!this.#held.isThere(kind, id)) return
    const all = [...this.#held.registersOf(kind, id).values()].flat()
    this.#put(keyOf(kind, id, ''), all, undefined, this.#held.rankOf(kind, id))
  }

  #put(key: string, over: Parameters<HeldThings['set']>[1], value: unknown, was: unknown): void {
    const { kind, member } = placeOf(key)!
    // What a value names comes before it, whatever way the two take.
    const marks = usedBy(kind, member, value).flatMap(([other, id]) => this.#held.edits(keyOf(other, id, '')))
    const ids = [...over, ...marks].filter((each) => !isBorn(each)).map(idOf)
    this.#add(key, [...new Set(ids)], value, was)
  }
}
