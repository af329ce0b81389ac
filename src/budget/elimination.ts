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

/**
 * Plans the elimination of a network of `nodeCount` nodes. What is needed only meanwhile lies in plain lists: rows of numbers of their own cost more to
 * be had than a net of a hundred lines takes to be planned.
 *
 * @param edges pairs of different nodes
 */
export function planElimination(
  nodeCount: number,
  edges: readonly { readonly from: number; readonly to: number }[],
): Elimination {
  const branchOfEdge = new Array<number>(edges.length)
  const degree = new Array<number>(nodeCount).fill(0)
  const first = new Array<number>(nodeCount).fill(-1)
  const last = new Array<number>(nodeCount).fill(-1)
  // Each branch is two halves, 2b and 2b + 1: a node's own halves lie in a chain, in the order in which they came.
  const to: number[] = []
  const after: number[] = []
  const before: number[] = []

  const link = (node: number, other: number) => {
    const half = to.length
    const end = last[node]!
    to.push(other)
    after.push(-1)
    before.push(end)
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
    return (to.length >> 1) - 1
  }
  for (let k = 0; k < edges.length; k++) branchOfEdge[k] = branchBetween(edges[k]!.from, edges[k]!.to)

  // Nodes by degree; an entry is stale once the node's degree has changed.
  const byDegree: number[][] = []
  const put = (node: number) => {
    const has = degree[node]!
    while (byDegree.length <= has) byDegree.push([])
    byDegree[has]!.push(node)
  }
  for (let node = nodeCount - 1; node >= 0; node--) put(node)

  const order: number[] = []
  const start = [0]
  const neighbour: number[] = []
  const branch: number[] = []
  const mesh: number[] = []
  const gone = new Array<boolean>(nodeCount).fill(false)
  let least = 0

  for (let k = 0; k < nodeCount; ) {
    const node = byDegree[least]?.pop()
    if (node === undefined) {
      least++
      continue
    }
    if (gone[node] || degree[node] !== least) continue
    gone[node] = true
    order.push(node)
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
    start.push(neighbour.length)
  }
  const [ofEdge, inOrder, starts, neighbours, branches, meshes] = inOneStretch(
    branchOfEdge,
    order,
    start,
    neighbour,
    branch,
    mesh,
  )
  return {
    nodeCount,
    branchOfEdge: ofEdge!,
    branchCount: to.length >> 1,
    order: inOrder!,
    start: starts!,
    neighbour: neighbours!,
    branch: branches!,
    mesh: meshes!,
  }
}

/** Lists of whole numbers over one stretch of memory: each by itself would cost as much as all of them. */
function inOneStretch(...lists: readonly (readonly number[])[]): readonly Int32Array[] {
  const memory = new ArrayBuffer(4 * lists.reduce((sum, { length }) => sum + length, 0))
  let at = 0
  return lists.map((list) => {
    const own = new Int32Array(memory, at, list.length)
    at += 4 * list.length
    for (let i = 0; i < list.length; i++) own[i] = list[i]!
    return own
  })
}
