/** Whether two lists have the very same things at the same places. */
export const isSame = (a: readonly unknown[], b: readonly unknown[]): boolean => {
  if (a.length !== b.length) return false
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false
  return true
}

/** Keeps the last answer until one of the things that it follows from is another. */
export function remembering<A extends readonly unknown[], R>(reckon: (...from: A) => R): (...from: A) => R {
  let last: { readonly from: A; readonly result: R } | undefined
  return (...from) => {
    if (!last || !isSame(last.from, from)) last = { from, result: reckon(...from) }
    return last.result
  }
}

const forgetting: (() => void)[] = []

/**
 * Lets go of all that is remembered of each thing: another document has come, and what was told of the one before is not asked again. What is dead is
 * let go of without this too; but a table that has once grown for it never shrinks.
 */
export function forgetThings(): void {
  for (const forget of forgetting) forget()
}

/** What was found for each of many things last: it goes when the thing goes, and with `forgetThings`. */
export function foundFor<K extends object, V>() {
  let known = new WeakMap<K, V>()
  forgetting.push(() => {
    known = new WeakMap()
  })
  return {
    get: (thing: K): V | undefined => known.get(thing),
    set: (thing: K, found: V): void => void known.set(thing, found),
  }
}

/** The same for each of many things: what is told of one follows from it and from `from`, and goes when it goes. */
export function memoryOfEach<K extends object, R>(): (
  thing: K,
  from: readonly unknown[],
  reckon: () => R,
) => R {
  const known = foundFor<K, { readonly from: readonly unknown[]; readonly result: R }>()
  return (thing, from, reckon) => {
    const before = known.get(thing)
    if (before && isSame(before.from, from)) return before.result
    const result = reckon()
    known.set(thing, { from, result })
    return result
  }
}

/** So many others in a row of the same length are taken for edits; more of them, and the row may have moved up. */
const FEW_EDITS = 8

/** Many short lists as one: most of them are empty, and `flat` asks of everything whether it is a list. */
export function joined<T>(lists: readonly (readonly T[])[]): T[] {
  const all: T[] = []
  for (const list of lists) for (let i = 0; i < list.length; i++) all.push(list[i]!)
  return all
}

interface Row<K, R> {
  readonly things: readonly K[]
  readonly from: readonly unknown[]
  readonly own: readonly (readonly unknown[])[]
  readonly results: readonly R[]
}

/**
 * The same for many things in a row: of the row before, what follows from the very same is taken over, wherever it stood; and where
 * all of it says the same, the very row. So a thousand things of which one is another cost hardly more than that one.
 *
 * `from` is what all of them follow from; each list of `own` has, at the place of each thing, what it alone follows from besides.
 */
export function memoryOfRow<K, R>(): (
  things: readonly K[],
  from: readonly unknown[],
  own: readonly (readonly unknown[])[],
  reckon: (thing: K, place: number) => R,
) => readonly R[] {
  let last: Row<K, R> | undefined
  forgetting.push(() => {
    last = undefined
  })
  return (things, from, own, reckon) => {
    const before = last && isSame(last.from, from) ? last : undefined
    const results = before ? takenOver(before, things, own, reckon) : things.map(reckon)
    last = { things, from, own, results }
    return results
  }
}

function takenOver<K, R>(
  before: Row<K, R>,
  things: readonly K[],
  own: readonly (readonly unknown[])[],
  reckon: (thing: K, place: number) => R,
): readonly R[] {
  const others = new Set<number>()
  addOthers(others, things, before.things)
  if (before.things.length !== things.length || others.size > FEW_EDITS)
    return movedUp(before, things, own, reckon)
  for (let k = 0; k < own.length; k++) addOthers(others, own[k]!, before.own[k]!)
  let results: R[] | undefined
  for (const place of others) {
    const result = reckon(things[place]!, place)
    if (result === before.results[place]) continue
    results ??= before.results.slice()
    results[place] = result
  }
  return results ?? before.results
}

/** Adds the places at which a list has another thing than before. */
function addOthers(places: Set<number>, now: readonly unknown[], before: readonly unknown[]): void {
  if (now === before) return
  const length = Math.max(now.length, before.length)
  for (let place = 0; place < length; place++) if (now[place] !== before[place]) places.add(place)
}

function movedUp<K, R>(
  before: Row<K, R>,
  things: readonly K[],
  own: readonly (readonly unknown[])[],
  reckon: (thing: K, place: number) => R,
): readonly R[] {
  const places = new Map(before.things.map((each, place) => [each, place]))
  return things.map((thing, place) => {
    const at = places.get(thing)
    const isSameOne = at !== undefined && own.every((list, k) => list[place] === before.own[k]![at])
    return isSameOne ? before.results[at]! : reckon(thing, place)
  })
}
