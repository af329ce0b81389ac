export interface Edge {
  readonly from: number
  readonly to: number
}

/** An elimination under way: what is taken out so far. */
export interface Begun {
  branchCount: number
  /** −1 for an edge of which both ends are still there. */
  readonly branchOfEdge: number[]
  readonly order: number[]
  readonly start: number[]
  readonly neighbour: number[]
  readonly branch: number[]
}

/**
 * Takes out what is left of a network once its trees are gone, each node of it on a ring or between two: least degree first. Gives
 * the branches that the stars turn into.
 */
export function takeOutRings(begun: Begun, nodeCount: number, edges: readonly Edge[]): readonly number[] {
  const { branchOfEdge, order, start, neighbour, branch } = begun
  const degree = new Array<number>(nodeCount).fill(0)
  const first = new Array<number>(nodeCount).fill(-1)
  const last = new Array<number>(nodeCount).fill(-1)
  // Each branch from here on is two halves: a node's own halves lie in a chain, in the order in which they came.
  const to: number[] = []
  const after: number[] = []
  const before: number[] = []
  const firstBranch = begun.branchCount
  const branchOfHalf = (half: number): number => firstBranch + (half >> 1)

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
      if (to[half] === other) return branchOfHalf(half)
    link(a, b)
    link(b, a)
    return begun.branchCount++
  }
  for (const [k, { from, to }] of edges.entries())
    if (branchOfEdge[k] === -1) branchOfEdge[k] = branchBetween(from, to)

  // Nodes by degree; an entry is stale once the node's degree has changed.
  const byDegree: number[][] = []
  const put = (node: number) => {
    const has = degree[node]!
    while (byDegree.length <= has) byDegree.push([])
    byDegree[has]!.push(node)
  }
  const gone = new Array<boolean>(nodeCount).fill(false)
  for (const node of order) gone[node] = true
  for (let node = nodeCount - 1; node >= 0; node--) if (!gone[node]) put(node)

  const mesh: number[] = []
  let least = 0
  while (order.length < nodeCount) {
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
      branch.push(branchOfHalf(half))
      unlink(to[half]!, half ^ 1)
    }
    for (let i = from; i < neighbour.length; i++)
      for (let j = i + 1; j < neighbour.length; j++) mesh.push(branchBetween(neighbour[i]!, neighbour[j]!))
    for (let i = from; i < neighbour.length; i++) {
      const other = neighbour[i]!
      put(other)
      least = Math.min(least, degree[other]!)
    }
    start.push(neighbour.length)
  }
  return mesh
}
