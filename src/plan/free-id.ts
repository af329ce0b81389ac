/** An id after another one, `r1-2`, that is not taken; from then on it is. */
export function freeId(id: string, taken: Set<string>): string {
  for (let count = 2; ; count++) {
    const fresh = `${id}-${count}`
    if (taken.has(fresh)) continue
    taken.add(fresh)
    return fresh
  }
}
