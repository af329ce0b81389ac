import { legGeometry } from '../geo/leg-length'
import { DEFAULT_ALLOWANCES } from '../plan/plan'
import type { Country } from './country'
import { JOINT_WORTH_M } from './joint-trees'
import { type Edge, edge, groupsOf } from './net-shapes'

/** Trees with joints in the open have at least this part of the length of those without, on a plane. */
const STEINER_RATIO = Math.sqrt(3) / 2

/** Most that each metre on the map can be saved on: no lay takes less wire than its way. */
const LEAST_SLACK = 1

/**
 * The least wire of any net, m: the shortest forest with as many trees as there are groups that need not talk with each other; or, where
 * joints in the open may be made, as much less as these can save.
 *
 * Sources: J. B. Kruskal, Proceedings of the American Mathematical Society 7 (1956), p. 48: stopped early, it gives the shortest forest.
 * E. N. Gilbert, H. O. Pollak, SIAM J. Appl. Math. 16 (1968), p. 1, conjectured the ratio; it is proved for up to nine places
 * (W. Kirszenblat, 2014, from memory), and no tree is known that goes below it.
 */
export const leastWireM = (country: Country): number => Math.min(...leastOf(country))

/** The same with a joint in the open counted as so much wire more. */
export function leastBurdenM(country: Country): number {
  const [plainM, joinedM] = leastOf(country)
  return Math.min(plainM, joinedM + JOINT_WORTH_M)
}

/** Without joints in the open, and with them; Infinity where there are none. */
function leastOf(country: Country): readonly [plainM: number, joinedM: number] {
  const { way, positionOf, meeting } = country
  const plain = shortestForest(country, ([a, b]) => way(a, b).wireM)
  const plainM = plain.reduce((sum, [a, b]) => sum + way(a, b).wireM, 0)
  if (!meeting || plain.length < 2) return [plainM, Number.POSITIVE_INFINITY]
  const straightM = ([a, b]: Edge) => legGeometry(positionOf(a), positionOf(b)).mapM
  const straight = shortestForest(country, straightM)
  const mapM = STEINER_RATIO * straight.reduce((sum, each) => sum + straightM(each), 0)
  // A joint makes one line more, with tails at both its ends.
  const tailsM = 2 * DEFAULT_ALLOWANCES.tailM * (straight.length + 1)
  return [plainM, mapM * slackOf(country) + tailsM]
}

/** Wire for each metre on the map: where ways are not led over the ground, all lie on it. */
const slackOf = ({ isLed }: Country): number =>
  isLed ? LEAST_SLACK : 1 + DEFAULT_ALLOWANCES.slackPct.surface / 100

function shortestForest({ shelf }: Country, lengthM: (edge: Edge) => number): readonly Edge[] {
  const { places, talk } = shelf
  const groups = groupsOf(places.length, talk).filter((group) => group.length > 1).length
  const edges = places
    .flatMap((_, a) => places.slice(a + 1).map((__, k) => edge(a, a + k + 1)))
    .sort((one, two) => lengthM(one) - lengthM(two))
  const rootOf = places.map((_, p) => p)
  const forest: Edge[] = []
  for (const [a, b] of edges) {
    if (places.length - forest.length <= Math.max(1, groups)) break
    const [from, to] = [rootOf[a]!, rootOf[b]!]
    if (from === to) continue
    for (const [p, root] of rootOf.entries()) if (root === from) rootOf[p] = to
    forest.push([a, b])
  }
  return forest
}
