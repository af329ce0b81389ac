import { canonical, isSame } from './canonical'

/** A value that is merged as a whole: one hand's or the other's, never half of each. */
export class Register<T = unknown> {
  readonly value: T
  constructor(value: T) {
    this.value = value
  }
}

/** A document as registers under names: what has no register of its own is told apart member by member. */
export interface Tree {
  readonly [name: string]: Tree | Register | undefined
}

/** One thing that both hands set differently. */
export interface Conflict {
  /** Names from the top down, `lines/l1/wire`. */
  readonly where: string
  readonly base: unknown
  readonly mine: unknown
  readonly theirs: unknown
  readonly kept: unknown
}

/** What the merge met on its way. */
export interface Met {
  readonly conflicts: Conflict[]
  /** Things that one hand removed and the other changed: they stay. */
  readonly stayed: string[]
}

/** What a tree says, without its registers' shells. */
export function plainOf(node: Tree | Register | undefined): unknown {
  if (node === undefined) return undefined
  if (node instanceof Register) return node.value
  return Object.fromEntries(Object.entries(node).map(([name, each]) => [name, plainOf(each)]))
}

const isTree = (node: Tree | Register | undefined): node is Tree =>
  node !== undefined && !(node instanceof Register)

const sameNode = (a: Tree | Register | undefined, b: Tree | Register | undefined): boolean =>
  a === b || isSame(plainOf(a), plainOf(b))

/**
 * Merges two trees that grew from one, register by register. What one hand alone changed is taken; what one removed and the other
 * changed stays; where both set one register differently, the one with the greater canonical text is kept, whichever hand's it is.
 * Names come in the order of the base, new ones after them by alphabet, so that the hands may be swapped.
 */
export function mergeTrees(
  base: Tree | Register | undefined,
  mine: Tree | Register | undefined,
  theirs: Tree | Register | undefined,
  where: string,
  met: Met,
): Tree | Register | undefined {
  if (sameNode(mine, theirs)) return mine
  if (sameNode(base, mine)) return theirs
  if (sameNode(base, theirs)) return mine
  if (isTree(mine) && isTree(theirs)) return mergeMembers(isTree(base) ? base : {}, mine, theirs, where, met)
  const changed = mine ?? theirs
  const gone = mine === undefined || theirs === undefined
  if (gone && isTree(changed)) {
    met.stayed.push(where)
    return changed
  }
  const kept = gone ? changed : greater(mine, theirs)
  const [b, m, t, k] = [base, mine, theirs, kept].map(plainOf)
  met.conflicts.push({ where, base: b ?? null, mine: m ?? null, theirs: t ?? null, kept: k ?? null })
  return kept
}

function mergeMembers(base: Tree, mine: Tree, theirs: Tree, where: string, met: Met): Tree {
  const known = Object.keys(base)
  const added = [...new Set([...Object.keys(mine), ...Object.keys(theirs)])]
    .filter((name) => !Object.hasOwn(base, name))
    .sort()
  const of = (tree: Tree, name: string) => (Object.hasOwn(tree, name) ? tree[name] : undefined)
  const members = [...known, ...added].map((name) => {
    const path = where === '' ? name : `${where}/${name}`
    return [name, mergeTrees(of(base, name), of(mine, name), of(theirs, name), path, met)] as const
  })
  return Object.fromEntries(members.filter(([, node]) => node !== undefined))
}

const greater = (a: Tree | Register | undefined, b: Tree | Register | undefined) =>
  canonical(plainOf(a)) > canonical(plainOf(b)) ? a : b
