import type { Country } from './country'
import { edge, everyPartition, groupsOf } from './net-shapes'

/** Up to so many places every way to share them out among circuits is begun from; each pair has its own line up to so many pairs. */
const MOST_SHARED = 6
const MOST_PAIRS = 12

/** The places of each circuit. */
export type Blocks = readonly (readonly number[])[]

/**
 * Which places share a circuit: all, or those that talk with each other; and each pair that talks on a line of its own, with a telephone
 * for each. Each is one way to share them out.
 */
export function waysToShare({ shelf }: Country): readonly Blocks[] {
  const { places, talk } = shelf
  const shared = everyPartition(places.length, talk)
  const covers = places.every((_, p) => talk.some((pair) => pair.includes(p)))
  const apart = covers && talk.length > 1 ? [talk.map((pair) => [...pair])] : []
  const key = (blocks: Blocks) =>
    blocks
      .map((block) => block.join())
      .toSorted()
      .join(' ')
  const known = new Set(shared.map(key))
  return [...shared, ...apart.filter((blocks) => !known.has(key(blocks)))]
}

/** Those of them that nets are begun from where there are many places. */
export function likelySharings(country: Country): readonly Blocks[] {
  const { places, talk } = country.shelf
  if (places.length <= MOST_SHARED) return waysToShare(country)
  const all = [places.map((_, p) => p)]
  const groups = talkingGroups(country)
  const telephones = country.sets.reduce((sum, { count }) => sum + count, 0)
  const apart = talk.map((pair) => [...pair])
  const isCovered = places.every((_, p) => talk.some((pair) => pair.includes(p)))
  return [
    all,
    ...(groups.length > 1 ? [groups] : []),
    ...(isCovered && talk.length > 1 && talk.length <= MOST_PAIRS && 2 * talk.length <= telephones
      ? [apart]
      : []),
  ]
}

/** Places that talk with each other, and those that talk with nobody beside their nearest. */
function talkingGroups({ shelf, way }: Country): Blocks {
  const wireM = (a: number, b: number) => way(...edge(a, b)).wireM
  const lone = groupsOf(shelf.places.length, shelf.talk).flatMap((group) => (group.length > 1 ? [] : group))
  const nearest = lone.map((p) => {
    const others = [...shelf.places.keys()].filter((other) => other !== p)
    return edge(
      p,
      others.reduce((a, b) => (wireM(p, b) < wireM(p, a) ? b : a)),
    )
  })
  return groupsOf(shelf.places.length, [...shelf.talk, ...nearest])
}
