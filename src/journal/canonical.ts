/**
 * One text for one value, however its members are ordered: by it two values are compared, and of two that differ the same one is
 * always the greater. Maps are told as their entries, members that are undefined are none.
 */
export function canonical(value: unknown): string {
  if (value instanceof Map) return canonical(Object.fromEntries(value))
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null'
  const members = Object.entries(value).filter(([, each]) => each !== undefined)
  members.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
  return `{${members.map(([name, each]) => `${JSON.stringify(name)}:${canonical(each)}`).join(',')}}`
}

export const isSame = (a: unknown, b: unknown): boolean =>
  a === b || (typeof a === 'object' && typeof b === 'object' && canonical(a) === canonical(b))
