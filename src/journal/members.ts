import { memberName, namesOfMember } from './keys'
import { inRankOrder, rankedAs } from './ranks'

/** A thing of a plan as registers: by the name of each, its value. */
export type Members = ReadonlyMap<string, unknown>
export type Plain = Readonly<Record<string, unknown>>

/** Members that are there, as registers. */
export const whole = (value: object, besides: readonly string[] = []): [string, unknown][] =>
  Object.entries(value).filter(([name, each]) => each !== undefined && !besides.includes(name))

/** Things under names in an order that counts: each with its rank. */
export function ranked(
  name: string,
  items: Iterable<readonly [string, unknown]>,
  before: Members,
): [string, unknown][] {
  const list = [...items]
  const rankOf = (key: string) => (before.get(memberName(name, key)) as [number] | undefined)?.[0]
  const ranks = rankedAs(
    list.map(([key]) => key),
    rankOf,
  )
  return list.map(([key, value]) => [memberName(name, key), [ranks.get(key), value]])
}

/** The inverse of {@link ranked}. */
export function inRank(members: Members, name: string): [string, unknown][] {
  const found: [string, number, unknown][] = []
  for (const [member, value] of members) {
    if (!member.startsWith(`${name}/`)) continue
    const [rank, inner] = value as [number, unknown]
    found.push([namesOfMember(member.slice(name.length + 1))[0]!, rank, inner])
  }
  found.sort(([a, first], [b, second]) => inRankOrder([a, first], [b, second]))
  return found.map(([key, , value]) => [key, value])
}

/** What a person sees of a register's value: without the rank that some have. */
export const shownValue = (member: string, value: unknown): unknown =>
  member.includes('/') && /^(lines|sets|electrodeOhms|unknown-)/.test(member) && Array.isArray(value)
    ? value[1]
    : value

/** What is no member of a member. */
export const flat = (members: Members): Plain =>
  Object.fromEntries([...members].filter(([member]) => member !== '' && !member.includes('/')))
