import { fermatPoint } from '../geo/fermat'
import { type PlanePoint, planeAbout } from '../geo/plane'
import type { Country } from './country'
import { type Edge, edge, everyTree } from './net-shapes'

/**
 * Wire that a joint in the open must save before it is thought of, m: somebody has to make it, keep the wet and the cattle off it, and find
 * it again. Allowance.
 */
export const JOINT_WORTH_M = 50

/** Turns in which joints that hang together are moved to where each lies best; each at least halves what is amiss. */
const TURNS = 60
/** Up to so many places joints are sought in every tree; beyond, in those that a search begins from. */
export const MOST_JOINED = 5

/** Every tree with joints in the open that comes of a tree between some places and takes so much less wire; each once. */
export function* jointTrees(country: Country, places: readonly number[]): Generator<readonly Edge[]> {
  if (!country.meeting || places.length < 3 || places.length > MOST_JOINED) return
  const known = new Set<string>()
  for (const tree of everyTree(places)) {
    const joined = withJoints(country, tree)
    if (!joined) continue
    const key = joined
      .map((each) => each.join('-'))
      .toSorted()
      .join(' ')
    if (known.has(key)) continue
    known.add(key)
    yield joined
  }
}

type Tree = readonly (readonly [number, number])[]

/**
 * A tree with a joint in the open wherever two of its lines would share a trunk for less wire: joints are put in one after the other, that
 * first which saves most, and then moved to where each lies best between its three neighbours. Undefined where none saves enough, or
 * where the places of joints are not known.
 *
 * Source: E. N. Gilbert, H. O. Pollak, Steiner minimal trees, SIAM J. Appl. Math. 16 (1968), p. 1: three lines meet at each joint, at 120°.
 */
export function withJoints(country: Country, tree: readonly Edge[]): readonly Edge[] | undefined {
  const { meeting } = country
  if (!meeting) return undefined
  const places = [...new Set(tree.flat())]
  const plane = planeAbout(places.map(country.positionOf))
  const points = places.map((place) => plane.toPlane(country.positionOf(place)))
  const first = places.length
  let links: Tree = tree.map(([a, b]) => [places.indexOf(a), places.indexOf(b)] as const)
  // A shortest tree has two joints fewer than places at the most.
  while (points.length < 2 * first - 2) {
    const better = bestInsertion(points, links)
    if (!better) break
    points.push(better.at)
    links = better.links
    settle(points, links, first)
  }
  if (points.length === first) return undefined
  const found = points.map((point, k) => {
    if (k < first) return places[k]!
    const three = neighbours(links, k).map((n) => plane.toPosition(points[n]!))
    return country.joint(meeting(three[0]!, three[1]!, three[2]!) ?? plane.toPosition(point))
  })
  const joined = links.map(([a, b]) => edge(found[a]!, found[b]!))
  if (joined.some(([a, b]) => a === b)) return undefined
  const wireM = (edges: readonly Edge[]) => edges.reduce((sum, [a, b]) => sum + country.way(a, b).wireM, 0)
  const worthM = JOINT_WORTH_M * (points.length - first)
  return wireM(joined) + worthM < wireM(tree) ? joined : undefined
}

const neighbours = (links: Tree, point: number): readonly number[] =>
  links.flatMap(([a, b]) => (a === point ? [b] : b === point ? [a] : []))

const apart = (points: readonly PlanePoint[], a: number, b: number): number =>
  Math.hypot(points[a]![0] - points[b]![0], points[a]![1] - points[b]![1])

/** The joint that saves most between two lines that share an end. */
function bestInsertion(points: readonly PlanePoint[], links: Tree) {
  let best: { readonly at: PlanePoint; readonly links: Tree; readonly savedM: number } | undefined
  for (const end of points.keys()) {
    const beside = neighbours(links, end)
    for (const [i, a] of beside.entries())
      for (const b of beside.slice(i + 1)) {
        const at = fermatPoint(points[end]!, points[a]!, points[b]!)
        if (!at) continue
        const joint = points.length
        const toM = [end, a, b].reduce(
          (sum, n) => sum + Math.hypot(points[n]![0] - at[0], points[n]![1] - at[1]),
          0,
        )
        const savedM = apart(points, end, a) + apart(points, end, b) - toM
        if (savedM <= Math.max(JOINT_WORTH_M, best?.savedM ?? 0)) continue
        const others = links.filter(
          ([p, q]) => !((p === end && (q === a || q === b)) || (q === end && (p === a || p === b))),
        )
        best = { at, savedM, links: [...others, [end, joint], [a, joint], [b, joint]] }
      }
  }
  return best
}

/** Moves joints to where each lies best between its three neighbours, until they come to rest. */
function settle(points: PlanePoint[], links: Tree, first: number): void {
  for (let turn = 0; turn < TURNS; turn++) {
    let movedM = 0
    for (let joint = first; joint < points.length; joint++) {
      const [a, b, c] = neighbours(links, joint)
      const at = fermatPoint(points[a!]!, points[b!]!, points[c!]!)
      if (!at) continue
      movedM = Math.max(movedM, Math.hypot(at[0] - points[joint]![0], at[1] - points[joint]![1]))
      points[joint] = at
    }
    if (movedM < 0.01) return
  }
}
