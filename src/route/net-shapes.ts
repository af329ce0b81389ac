/** Costs between places, each with each: `costs[i][j]`, the same both ways. */
export type CostMatrix = readonly (readonly number[])[]

/** A connection between two places, by their indices. */
export type Link = readonly [from: number, to: number]

/** Most places for which every ring is weighed; beyond, a ring is bettered until no change betters it. */
const EXACT_RING = 10

/**
 * The least that joins every place: a minimum spanning tree; undefined where some place cannot be reached.
 *
 * Source: R. C. Prim, Shortest connection networks, Bell System Technical Journal 36 (1957), p. 1389.
 */
export function spanningTree(costs: CostMatrix): Link[] | undefined {
  const links: Link[] = []
  const cheapest = costs.map((_, i) => ({ cost: i === 0 ? 0 : Infinity, from: -1, joined: false }))
  for (let round = 0; round < costs.length; round++) {
    let next = -1
    cheapest.forEach(({ cost, joined }, i) => {
      if (!joined && cost < (next < 0 ? Infinity : cheapest[next]!.cost)) next = i
    })
    if (next < 0) return undefined
    cheapest[next]!.joined = true
    if (cheapest[next]!.from >= 0) links.push([cheapest[next]!.from, next])
    cheapest.forEach((place, i) => {
      if (!place.joined && costs[next]![i]! < place.cost)
        Object.assign(place, { cost: costs[next]![i]!, from: next })
    })
  }
  return links
}

/** Every place joined to one of them by a line of its own; undefined where some place cannot be reached. */
export function star(costs: CostMatrix, hub: number): Link[] | undefined {
  const links: Link[] = []
  for (let i = 0; i < costs.length; i++) if (i !== hub) links.push([hub, i])
  return links.every(([from, to]) => costs[from]![to]! < Infinity) ? links : undefined
}

/**
 * A closed ring through every place: the cheapest of all for up to ten, a good one beyond (2-opt from a nearest-neighbour tour);
 * undefined for fewer than three, or where none closes.
 *
 * Sources: M. Held, R. M. Karp, J. SIAM 10 (1962), p. 196; G. A. Croes, Operations Research 6 (1958), p. 791.
 */
export function closedRing(costs: CostMatrix): Link[] | undefined {
  if (costs.length < 3) return undefined
  const order = costs.length <= EXACT_RING ? bestOrder(costs) : betteredOrder(costs)
  const links = order.map((place, i): Link => [place, order[(i + 1) % order.length]!])
  const closes = links.length === costs.length && links.every(([from, to]) => costs[from]![to]! < Infinity)
  return closes ? links : undefined
}

/** Held and Karp: the cheapest way to have been through a set of places and stand at the last of it. */
function bestOrder(costs: CostMatrix): number[] {
  const others = costs.length - 1
  const sets = 1 << others
  const best = Array.from({ length: sets }, () => new Float64Array(others).fill(Infinity))
  const cameFrom = Array.from({ length: sets }, () => new Int8Array(others).fill(-1))
  for (let i = 0; i < others; i++) best[1 << i]![i] = costs[0]![i + 1]!
  for (let set = 1; set < sets; set++) {
    for (let last = 0; last < others; last++) {
      const soFar = best[set]![last]!
      if (soFar === Infinity) continue
      for (let next = 0; next < others; next++) {
        if (set & (1 << next)) continue
        const cost = soFar + costs[last + 1]![next + 1]!
        const grown = set | (1 << next)
        if (cost < best[grown]![next]!) {
          best[grown]![next] = cost
          cameFrom[grown]![next] = last
        }
      }
    }
  }
  let set = sets - 1
  let last = 0
  const closing = (i: number) => best[sets - 1]![i]! + costs[i + 1]![0]!
  for (let i = 1; i < others; i++) if (closing(i) < closing(last)) last = i
  const order: number[] = []
  while (last >= 0) {
    order.push(last + 1)
    const before = cameFrom[set]![last]!
    set &= ~(1 << last)
    last = before
  }
  return [0, ...order.reverse()]
}

function betteredOrder(costs: CostMatrix): number[] {
  const size = costs.length
  const order = [0]
  const left = new Set(Array.from({ length: size - 1 }, (_, i) => i + 1))
  while (left.size > 0) {
    const here = costs[order.at(-1)!]!
    const next = [...left].reduce((a, b) => (here[b]! < here[a]! ? b : a))
    order.push(next)
    left.delete(next)
  }
  for (let changed = true; changed; ) {
    changed = false
    for (let i = 0; i < size - 1; i++) {
      for (let k = i + 2; k < size; k++) {
        const [a, b] = [order[i]!, order[i + 1]!]
        const [c, d] = [order[k]!, order[(k + 1) % size]!]
        if (d === a) continue
        // Turned round, the stretch from b to c joins a to c and b to d.
        if (costs[a]![c]! + costs[b]![d]! < costs[a]![b]! + costs[c]![d]! - 1e-9) {
          order.splice(i + 1, k - i, ...order.slice(i + 1, k + 1).reverse())
          changed = true
        }
      }
    }
  }
  return order
}
