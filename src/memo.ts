const isSame = (a: readonly unknown[], b: readonly unknown[]): boolean => {
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

/** The same for each of many things: what is told of one follows from it and from `from`, and goes when it goes. */
export function memoryOfEach<K extends object, R>(): (
  thing: K,
  from: readonly unknown[],
  reckon: () => R,
) => R {
  const known = new WeakMap<K, { readonly from: readonly unknown[]; readonly result: R }>()
  return (thing, from, reckon) => {
    const before = known.get(thing)
    if (before && isSame(before.from, from)) return before.result
    const result = reckon()
    known.set(thing, { from, result })
    return result
  }
}
