/** Names as one text, each apart from the next whatever letters are in it (RFC 6901, JSON Pointer). */
const escaped = (name: string): string => name.replaceAll('~', '~0').replaceAll('/', '~1')
const unescaped = (name: string): string => name.replaceAll('~1', '/').replaceAll('~0', '~')

/** The name of a member, from the top down: `sets/station-1`. */
export const memberName = (...names: readonly string[]): string => names.map(escaped).join('/')

/** The inverse of {@link memberName}. */
export const namesOfMember = (member: string): readonly string[] => member.split('/').map(unescaped)

/** Where a register stands: the kind of its thing, the thing's id, and the member; the empty member is the mark that the thing is there. */
export interface Place {
  readonly kind: string
  readonly id: string
  readonly member: string
}

/** `lines/l1/wire` */
export const keyOf = (kind: string, id: string, member: string): string =>
  `${escaped(kind)}/${escaped(id)}/${member}`

/** Undefined for what is no key. */
export function placeOf(key: string): Place | undefined {
  const first = key.indexOf('/')
  const second = key.indexOf('/', first + 1)
  if (first < 1 || second < 0) return undefined
  return {
    kind: unescaped(key.slice(0, first)),
    id: unescaped(key.slice(first + 1, second)),
    member: key.slice(second + 1),
  }
}

/** A key as people and the command line read it: what belongs to no thing is named by its member alone. */
export function whereOf(key: string): string {
  const { kind = '', id = '', member = '' } = placeOf(key) ?? {}
  if (kind === 'plan') return member
  return member === '' ? `${kind}/${id}` : `${kind}/${id}/${member}`
}
