/** A connection between two places, by their indices, the lower first. */
export type Edge = readonly [a: number, b: number]

/** How the lines of a circuit lie. */
export type Shape = 'pair' | 'chain' | 'star' | 'tree' | 'ring'

export const edge = (a: number, b: number): Edge => (a < b ? [a, b] : [b, a])

/**
 * Every tree that joins some places: mⁿ⁻² of them for n places.
 *
 * Source: H. Prüfer, Neuer Beweis eines Satzes über Permutationen, Archiv der Mathematik und Physik 27 (1918), p. 742: one tree for each
 * word of n − 2 places.
 */
export function* everyTree(places: readonly number[]): Generator<readonly Edge[]> {
  const count = places.length
  if (count < 2) return
  const word = new Array<number>(count - 2).fill(0)
  for (;;) {
    yield treeOf(word, places)
    let k = word.length - 1
    while (k >= 0 && word[k] === count - 1) word[k--] = 0
    if (k < 0) return
    word[k]!++
  }
}

function treeOf(word: readonly number[], places: readonly number[]): readonly Edge[] {
  const degree = places.map((_, i) => 1 + word.filter((each) => each === i).length)
  const edges: Edge[] = []
  for (const inner of word) {
    const leaf = degree.indexOf(1)
    edges.push(edge(places[leaf]!, places[inner]!))
    degree[leaf]!--
    degree[inner]!--
  }
  const [a, b] = degree.flatMap((left, i) => (left === 1 ? [places[i]!] : []))
  edges.push(edge(a!, b!))
  return edges
}

/** Every closed ring through some places, three or more: (n − 1)! / 2 of them. */
export function* everyRing(places: readonly number[]): Generator<readonly Edge[]> {
  if (places.length < 3) return
  const [first, ...others] = places
  for (const order of orders(others)) {
    // Each ring comes twice, once each way round.
    if (order[0]! > order.at(-1)!) continue
    const round = [first!, ...order]
    yield round.map((place, i) => edge(place, round[(i + 1) % round.length]!))
  }
}

function* orders(of: readonly number[]): Generator<readonly number[]> {
  if (of.length <= 1) {
    yield of
    return
  }
  for (const [i, first] of of.entries())
    for (const rest of orders([...of.slice(0, i), ...of.slice(i + 1)])) yield [first, ...rest]
}

/** What the edges of a circuit look like. */
export function shapeOf(edges: readonly Edge[]): Shape {
  const places = new Set(edges.flat()).size
  if (places === 2) return 'pair'
  if (edges.length >= places) return 'ring'
  const degrees = new Map<number, number>()
  for (const each of edges) for (const end of each) degrees.set(end, (degrees.get(end) ?? 0) + 1)
  const most = Math.max(...degrees.values())
  if (most <= 2) return 'chain'
  return most === places - 1 ? 'star' : 'tree'
}

/** The two sides into which a tree falls where one of its edges is taken out: the side of the edge's first end. */
export function sideOf(edges: readonly Edge[], taken: Edge): ReadonlySet<number> {
  const reached = new Set([taken[0]])
  for (let grown = true; grown; ) {
    grown = false
    for (const each of edges) {
      if (each === taken) continue
      const [a, b] = each
      if (reached.has(a) === reached.has(b)) continue
      reached.add(a).add(b)
      grown = true
    }
  }
  return reached
}

/**
 * Every way to share places out among circuits of two places or more, so that all that talk with each other share one.
 *
 * @param talk pairs that must share a circuit
 */
export function everyPartition(
  count: number,
  talk: readonly Edge[],
): readonly (readonly (readonly number[])[])[] {
  const found: number[][][] = []
  const place = (next: number, blocks: number[][]): void => {
    if (next === count) {
      const blockOf = (p: number) => blocks.findIndex((block) => block.includes(p))
      const isWhole = blocks.every(({ length }) => length > 1)
      if (isWhole && talk.every(([a, b]) => blockOf(a) === blockOf(b)))
        found.push(blocks.map((block) => [...block]))
      return
    }
    for (const block of blocks) {
      block.push(next)
      place(next + 1, blocks)
      block.pop()
    }
    blocks.push([next])
    place(next + 1, blocks)
    blocks.pop()
  }
  place(0, [])
  return found
}

/** Places by who must reach whom, over others too: the groups in which they hang together. */
export function groupsOf(count: number, talk: readonly Edge[]): readonly (readonly number[])[] {
  const groupOf = Array.from({ length: count }, (_, p) => p)
  for (const [a, b] of talk) {
    const [from, to] = [groupOf[a]!, groupOf[b]!]
    for (const [p, group] of groupOf.entries()) if (group === from) groupOf[p] = to
  }
  return [...new Set(groupOf)].map((group) => [...groupOf.keys()].filter((p) => groupOf[p] === group))
}
