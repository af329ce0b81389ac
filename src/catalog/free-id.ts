/** The next id after another that nothing bears yet: `wd-1a-2`. */
export function freeId(id: string, known: Iterable<{ readonly id: string }>): string {
  const taken = new Set([...known].map((entry) => entry.id))
  let count = 2
  while (taken.has(`${id}-${count}`)) count++
  return `${id}-${count}`
}
