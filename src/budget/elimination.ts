/**
 * In which order to take the stations out of a network, found once for its shape: least degree first. On a tree that takes
 * leaves, adds no branch, and costs time in proportion to the lines; a ring adds one branch for each station of its loop.
 */
export interface Elimination {
  readonly nodeCount: number
  /** Branch on which each given edge lies; parallel edges share one. */
  readonly branchOfEdge: Int32Array
  readonly branchCount: number
  /** Nodes in the order in which they are taken out. */
  readonly order: Int32Array
  /** For the k-th node taken out: where its neighbours stand in `neighbour` and `branch`. Length nodeCount + 1. */
  readonly start: Int32Array
  readonly neighbour: Int32Array
  readonly branch: Int32Array
  /** Branches that the star turns into: for neighbours i < j in turn. */
  readonly mesh: Int32Array
}

/** Plans the elimination of a network of `nodeCount` nodes. @param edges pairs of different nodes */
export function planElimination(
  nodeCount: number,
  edges: readonly (readonly [number, number])[],
): Elimination {
  const branchOfEdge = new Int32Array(edges.length)
  const degree = new Int32Array(nodeCount)
  const first = new Int32Array(nodeCount).fill(-1)
  const last = new Int32Array(nodeCount).fill(-1)
  // Each branch is two halves, 2b and 2b + 1: a node's own halves lie in a chain, in the order in which they came.
  let [to, after, before] = chains(4 * edges.length)
  let halves = 0

  const link = (node: number, other: number) => {
    if (halves === to.length) [to, after, before] = chains(2 * halves + 2, to, after, before)
    const half = halves++
    const end = last[node]!
    to[half] = other
    after[half] = -1
    before[half] = end
    if (end === -1) first[node] = half
    else after[end] = half
    last[node] = half
    degree[node]!++
  }
  const unlink = (node: number, half: number) => {
    const [ahead, behind] = [before[half]!, after[half]!]
    if (ahead === -1) first[node] = behind
    else after[ahead] = behind
    if (behind === -1) last[node] = ahead
    else before[behind] = ahead
    degree[node]!--
  }
  const branchBetween = (a: number, b: number): number => {
    const isFewer = degree[a]! <= degree[b]!
    const other = isFewer ? b : a
    for (let half = first[isFewer ? a : b]!; half !== -1; half = after[half]!)
      if (to[half] === other) return half >> 1
    link(a, b)
    link(b, a)
    return (halves >> 1) - 1
  }
  for (let k = 0; k < edges.length; k++) branchOfEdge[k] = branchBetween(edges[k]![0], edges[k]![1])

  // Nodes by degree; an entry is stale once the node's degree has changed.
  const byDegree: number[][] = []
  const put = (node: number) => {
    const has = degree[node]!
    while (byDegree.length <= has) byDegree.push([])
    byDegree[has]!.push(node)
  }
  for (let node = nodeCount - 1; node >= 0; node--) put(node)

  const order = new Int32Array(nodeCount)
  const start = new Int32Array(nodeCount + 1)
  const neighbour: number[] = []
  const branch: number[] = []
  const mesh: number[] = []
  const gone = new Uint8Array(nodeCount)
  let least = 0

  for (let k = 0; k < nodeCount; ) {
    const node = byDegree[least]?.pop()
    if (node === undefined) {
      least++
      continue
    }
    if (gone[node] || degree[node] !== least) continue
    gone[node] = 1
    order[k] = node
    const from = neighbour.length
    for (let half = first[node]!; half !== -1; half = after[half]!) {
      neighbour.push(to[half]!)
      branch.push(half >> 1)
      unlink(to[half]!, half ^ 1)
    }
    for (let i = from; i < neighbour.length; i++)
      for (let j = i + 1; j < neighbour.length; j++) mesh.push(branchBetween(neighbour[i]!, neighbour[j]!))
    for (let i = from; i < neighbour.length; i++) {
      const other = neighbour[i]!
      put(other)
      least = Math.min(least, degree[other]!)
    }
    k++
    start[k] = neighbour.length
  }
  return {
    nodeCount,
    branchOfEdge,
    branchCount: halves >> 1,
    order,
    start,
    neighbour: new Int32Array(neighbour),
    branch: new Int32Array(branch),
    mesh: new Int32Array(mesh),
  }
}

/** Three rows with room for so many halves, with what stands in those before. */
function chains(room: number, ...before: readonly Int32Array[]): [Int32Array, Int32Array, Int32Array] {
  const row = (k: number) => {
    const own = new Int32Array(room)
    if (before[k]) own.set(before[k])
    return own
  }
  return [row(0), row(1), row(2)]
}
