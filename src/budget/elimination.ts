import { type Begun, type Edge, takeOutRings } from './ring-elimination'

/**
 * In which order to take the stations out of a network, found once for its shape: least degree first. On a tree that takes
 * leaves, adds no branch, and costs time in proportion to the lines; a ring adds one branch for each station of its loop.
 */
export interface Elimination {
  readonly nodeCount: number
  /** Branch on which each given edge lies; parallel edges share one. */
  readonly branchOfEdge: readonly number[]
  readonly branchCount: number
  /** Nodes in the order in which they are taken out. */
  readonly order: readonly number[]
  /** For the k-th node taken out: where its neighbours stand in `neighbour` and `branch`. Length nodeCount + 1. */
  readonly start: readonly number[]
  readonly neighbour: readonly number[]
  readonly branch: readonly number[]
  /** Branches that the star turns into: for neighbours i < j in turn. */
  readonly mesh: readonly number[]
}

/** Plans the elimination of a network of `nodeCount` nodes. @param edges pairs of different nodes */
export function planElimination(nodeCount: number, edges: readonly Edge[]): Elimination {
  const begun = takeOutTrees(nodeCount, edges)
  const mesh = begun.order.length < nodeCount ? takeOutRings(begun, nodeCount, edges) : []
  return { nodeCount, ...begun, mesh }
}

const TAKEN = -1

/**
 * Takes out each leaf, and its neighbour where that makes a leaf of it, until there is none: all of a tree. A node keeps the count of its
 * edges and the exclusive or of their numbers, which for a leaf is its one edge: lists of them would cost more than the whole plan.
 */
function takeOutTrees(nodeCount: number, edges: readonly Edge[]): Begun {
  const degree = new Array<number>(nodeCount).fill(0)
  const edgesAt = new Array<number>(nodeCount).fill(0)
  for (let k = 0; k < edges.length; k++) {
    const { from, to } = edges[k]!
    degree[from]!++
    degree[to]!++
    edgesAt[from]! ^= k
    edgesAt[to]! ^= k
  }
  const branchOfEdge = new Array<number>(edges.length).fill(-1)
  // Lists of their full length: to grow them would cost as much again.
  const order = new Array<number>(nodeCount)
  const start = new Array<number>(nodeCount + 1)
  const neighbour = new Array<number>(edges.length)
  const branch = new Array<number>(edges.length)
  let nodes = 0
  let branches = 0
  start[0] = 0
  const take = (node: number) => {
    order[nodes++] = node
    start[nodes] = branches
    degree[node] = TAKEN
  }
  for (let first = 0; first < nodeCount; first++) {
    let node = first
    while (degree[node] === 1) {
      const k = edgesAt[node]!
      const { from, to } = edges[k]!
      const other = from === node ? to : from
      branchOfEdge[k] = branches
      neighbour[branches] = other
      branch[branches] = branches
      branches++
      take(node)
      degree[other]!--
      edgesAt[other]! ^= k
      node = other
    }
    // The last of its tree, or one that stands alone.
    if (degree[node] === 0) take(node)
  }
  order.length = nodes
  start.length = nodes + 1
  neighbour.length = branches
  branch.length = branches
  return { branchCount: branches, branchOfEdge, order, start, neighbour, branch }
}
