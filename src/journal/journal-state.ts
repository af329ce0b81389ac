import type { Plan } from '../plan/plan'
import { isObject } from '../schema/schema'
import { isSame } from './canonical'
import { type Edit, idOf, isBorn } from './edit'
import { editFault } from './edit-faults'
import type { Ranks } from './held-things'
import { Journal } from './journal'
import { keyOf, placeOf } from './keys'
import { KINDS } from './things'

/**
 * All that a journal holds besides the plan that it makes: enough to go on from there and to come together with any other journal of the
 * plan, though the edits that were overwritten are no longer told.
 */
export interface JournalState {
  readonly id: string
  /** How many edits of each hand are in. */
  readonly seen: Readonly<Record<string, number>>
  /** What stands in the registers that somebody has edited, or that the plan shows mended. */
  readonly standing: readonly Edit[]
  /** Things that are in the plan only because it was mended. */
  readonly made: readonly string[]
  /** By kind the ranks of the things in the plan, where they are not counted from 1. */
  readonly ranks: Ranks
}

export function stateOf(journal: Journal): JournalState {
  const { things } = journal
  const standing: Edit[] = []
  // That there is a plan is nobody's edit.
  for (const [key, edits] of things.edited()) if (key !== keyOf('plan', '', '')) standing.push(...edits)
  const told = new Set(standing.map(({ key }) => key))
  const made: string[] = []
  const { plan } = journal.mended()
  const ranks: Record<string, readonly number[]> = {}
  for (const kind of Object.keys(KINDS)) {
    const held = things.there(kind)
    const shown = [...KINDS[kind]!.list(plan)]
    const own = shown.map(([id]) => things.rankOf(kind, id) ?? 0)
    if (own.some((rank, at) => rank !== at + 1)) ranks[kind] = own
    if (kind === 'plan') continue
    for (const [id, thing] of shown) {
      if (isSame(thing, held.get(id))) continue
      const registers = things.registersOf(kind, id)
      if (registers.size === 0) made.push(keyOf(kind, id, ''))
      for (const edits of registers.values()) standing.push(...edits.filter(({ key }) => !told.has(key)))
    }
  }
  return { id: journal.id, seen: Object.fromEntries(journal.seen), standing, made, ranks }
}

/** The journal that had this state and made this plan; a sentence where the state is none. */
export function journalOf(plan: Plan, value: unknown): Journal | string {
  const state = soundState(value)
  if (typeof state === 'string') return state
  const made = new Set(state.made)
  const isMade: IsMade = (kind, id) => made.has(keyOf(kind, id, ''))
  const ranks = Object.fromEntries(
    Object.entries(state.ranks).map(([kind, list]) => [kind, ranksLeft(plan, kind, list!, isMade)]),
  )
  const journal = new Journal(state.id, made.size > 0 ? withoutMade(plan, isMade) : plan, ranks)
  for (const [key, edits] of byKey(state.standing)) journal.things.set(key, edits)
  journal.saw(new Map(Object.entries(state.seen)), state.standing)
  return journal
}

const ranksLeft = (plan: Plan, kind: string, ranks: readonly number[], isMade: IsMade) =>
  [...KINDS[kind]!.list(plan)].flatMap(([id], at) => (isMade(kind, id) ? [] : [ranks[at] ?? 0]))

type IsMade = (kind: string, id: string) => boolean

/** Only circuits and records are ever made by mending. */
const withoutMade = (plan: Plan, isMade: IsMade): Plan => ({
  ...plan,
  circuits: new Map([...plan.circuits].filter(([id]) => !isMade('circuits', id))),
  ...(plan.field && { field: plan.field.filter(({ id }) => !isMade('field', id)) }),
})

/** Brings what another journal of the same plan holds into this one. Gives the keys of the registers that may say something else now. */
export function takeState(journal: Journal, value: unknown): ReadonlySet<string> | string {
  const state = soundState(value)
  if (typeof state === 'string') return state
  if (state.id !== journal.id) return 'That is the journal of another plan.'
  const { things } = journal
  const theirs = byKey(state.standing)
  const sawThere = ({ hand, number }: Edit) => number <= (state.seen[hand] ?? 0)
  const changed = new Set<string>()
  const put = (key: string, mine: readonly Edit[], other: readonly Edit[]) => {
    const ids = new Set(other.map(idOf))
    const kept = mine.filter((each) => !isBorn(each) && (ids.has(idOf(each)) || !sawThere(each)))
    const come = other.filter((each) => !isBorn(each) && !journal.has(idOf(each)))
    const both = [...kept, ...come]
    // Nobody has edited it anywhere: it is as all began with it.
    const stands = both.length > 0 || [...mine, ...other].some((each) => !isBorn(each)) ? both : mine
    if (stands.length === mine.length && stands.every((each, at) => each === mine[at])) return
    things.set(key, stands)
    changed.add(key)
  }
  const own = new Map([...things.edited()])
  // What was forgotten here, or never heard of, and is known there.
  const isForgotten = ([key]: readonly [string, unknown]) => {
    const { kind, id } = placeOf(key)!
    return things.registersOf(kind, id).size === 0
  }
  for (const [key, edits] of [...theirs].filter(isForgotten)) {
    things.set(key, edits)
    changed.add(key)
    theirs.delete(key)
  }
  for (const [key, edits] of own) put(key, edits, theirs.get(key) ?? [])
  for (const [key, edits] of theirs) if (!own.has(key)) put(key, things.edits(key), edits)
  journal.saw(new Map(Object.entries(state.seen)), state.standing)
  return changed
}

function byKey(edits: readonly Edit[]): Map<string, readonly Edit[]> {
  const found = new Map<string, Edit[]>()
  for (const edit of edits) {
    const before = found.get(edit.key)
    if (before) before.push(edit)
    else found.set(edit.key, [edit])
  }
  return found
}

/** No hand does more: a greater count is made up, and would leave its true edits unheard. */
const MOST_EDITS = 1e9

const NONE = 'The journal that came with the plan cannot be read: the plan is taken without it.'

function soundState(value: unknown): JournalState | string {
  const { id, seen, standing, made, ranks } = (isObject(value) ? value : {}) as Partial<JournalState>
  const isCount = (each: unknown) =>
    Number.isSafeInteger(each) && (each as number) >= 0 && (each as number) <= MOST_EDITS
  if (typeof id !== 'string' || !isObject(seen) || !Object.values(seen).every(isCount)) return NONE
  if (!Array.isArray(standing) || !Array.isArray(made)) return NONE
  const isRanked = ([kind, list]: [string, unknown]) =>
    Object.hasOwn(KINDS, kind) && Array.isArray(list) && list.every(Number.isFinite)
  if (!isObject(ranks) || !Object.entries(ranks).every(isRanked)) return NONE
  const isSound = standing.every((edit: unknown) => {
    if (!isObject(edit)) return false
    // What was there when the journal began has no number.
    const told = edit.hand === '' ? { ...edit, hand: 'x', number: 1, at: 1 } : edit
    const isIn = edit.hand === '' || (told.number as number) <= (seen[told.hand as string] as number)
    return isIn && editFault(told as unknown as Edit) === undefined
  })
  return isSound ? ({ id, seen, standing, made, ranks } as JournalState) : NONE
}

/** So long what was taken out can still come back, ms: whoever was away longer finds it gone. */
export const KEPT_MS = 90 * 24 * 60 * 60 * 1000

/** Forgets things that were taken out long ago. */
export function forgetOld(journal: Journal, clockMs: number): void {
  const { things } = journal
  for (const [kind, id] of things.gone()) {
    const marks = things.edits(keyOf(kind, id, ''))
    if (marks.every(({ at }) => at < clockMs - KEPT_MS)) things.forget(kind, id)
  }
}
