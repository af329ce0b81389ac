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
  const adjacent: Map<number, number>[] = Array.from({ length: nodeCount }, () => new Map())
  const branchOfEdge = new Int32Array(edges.length)
  let branchCount = 0

  const branchBetween = (a: number, b: number): number => {
    const known = adjacent[a]!.get(b)
    if (known !== undefined) return known
    adjacent[a]!.set(b, branchCount)
    adjacent[b]!.set(a, branchCount)
    return branchCount++
  }
  for (const [k, [a, b]] of edges.entries()) branchOfEdge[k] = branchBetween(a, b)

  // Nodes by degree; an entry is stale once the node's degree has changed.
  const byDegree: number[][] = []
  const put = (node: number) => {
    const degree = adjacent[node]!.size
    while (byDegree.length <= degree) byDegree.push([])
    byDegree[degree]!.push(node)
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
    if (gone[node] || adjacent[node]!.size !== least) continue
    gone[node] = 1
    order[k] = node
    const around = [...adjacent[node]!]
    for (const [other, slot] of around) {
      neighbour.push(other)
      branch.push(slot)
      adjacent[other]!.delete(node)
    }
    for (let i = 0; i < around.length; i++) {
      for (let j = i + 1; j < around.length; j++) mesh.push(branchBetween(around[i]![0], around[j]![0]))
    }
    for (const [other] of around) {
      put(other)
      least = Math.min(least, adjacent[other]!.size)
    }
    k++
    start[k] = neighbour.length
  }
  return {
    nodeCount,
    branchOfEdge,
    branchCount,
    order,
    start,
    neighbour: Int32Array.from(neighbour),
    branch: Int32Array.from(branch),
    mesh: Int32Array.from(mesh),
  }
}
