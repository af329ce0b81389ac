/** A connection between two things that are named by id. */
export interface Link {
  readonly id: string
  readonly a: string
  readonly b: string
}

/** Where one thing stands on a squared sheet. */
export interface PlacedNode {
  readonly id: string
  readonly column: number
  readonly row: number
  /** This node begins a piece and stands on an earlier one too: the letter that joins the two. */
  readonly comesFrom?: string
  /** More hangs on this node, drawn on the piece that begins with this letter. */
  readonly goesOn?: string
}

/** A link as drawn: from its parent straight down, then to the right. */
export interface PlacedLink {
  readonly link: Link
  readonly parent: PlacedNode
  readonly child: PlacedNode
}

/** As much of a net as fits on one drawing. */
export interface TreePiece {
  readonly nodes: readonly PlacedNode[]
  readonly links: readonly PlacedLink[]
  readonly rows: number
}

export interface TreeLayout {
  readonly pieces: readonly TreePiece[]
  /** Links that close a ring: drawn as words at both their ends, for any line there would cross others. */
  readonly closing: readonly Link[]
}

interface Branch {
  readonly id: string
  readonly link?: Link
  readonly children: readonly Branch[]
  /** Columns that the branch needs. */
  readonly depth: number
}

/** The tree of shortest paths from the root, and the links that it leaves over. */
function treeFrom(
  root: string,
  links: readonly Link[],
): { readonly tree: Branch; readonly closing: readonly Link[] } {
  const at = new Map<string, Link[]>()
  for (const link of links) {
    for (const end of [link.a, link.b]) at.set(end, [...(at.get(end) ?? []), link])
  }
  const parentLink = new Map<string, Link>()
  const order = [root]
  const seen = new Set(order)
  for (const id of order) {
    for (const link of at.get(id) ?? []) {
      const other = link.a === id ? link.b : link.a
      if (seen.has(other)) continue
      seen.add(other)
      parentLink.set(other, link)
      order.push(other)
    }
  }
  const used = new Set(parentLink.values())
  const branches = new Map<string, Branch>()
  for (const id of order.toReversed()) {
    const children = (at.get(id) ?? []).flatMap((link) => {
      const other = link.a === id ? link.b : link.a
      return parentLink.get(other) === link && other !== root ? [branches.get(other)!].filter(Boolean) : []
    })
    const link = parentLink.get(id)
    const depth = 1 + children.reduce((most, child) => Math.max(most, child.depth), 0)
    branches.set(id, {
      id,
      children: children.toSorted((x, y) => y.depth - x.depth),
      depth,
      ...(link && { link }),
    })
  }
  return { tree: branches.get(root)!, closing: links.filter((link) => !used.has(link)) }
}

/** A, B … Z, AA, AB … */
const letter = (n: number): string =>
  (n < 26 ? '' : letter(Math.floor(n / 26) - 1)) + String.fromCharCode(65 + (n % 26))

/**
 * A net drawn from its root to the right, the longest branch straight on, the others below it in rows of their own: a tree laid out so
 * has no crossing. What would leave the sheet goes on on another piece, which begins with the node that it hangs on.
 */
export function layOutTree(
  root: string,
  links: readonly Link[],
  room: { readonly columns: number; readonly rows: number },
): TreeLayout {
  const { tree, closing } = treeFrom(root, links)
  const pieces: TreePiece[] = []
  const waiting: {
    readonly id: string
    readonly children: readonly Branch[]
    readonly comesFrom?: string
  }[] = [{ id: tree.id, children: tree.children }]
  for (const piece of waiting) {
    const nodes: PlacedNode[] = []
    const placed: PlacedLink[] = []
    const put = (node: PlacedNode) => {
      nodes.push(node)
      return node
    }
    /** Places a node with what hangs on it, and tells how many rows that took. */
    const place = (
      id: string,
      children: readonly Branch[],
      column: number,
      row: number,
      more: { comesFrom?: string; parent?: PlacedNode; link?: Link } = {},
    ): number => {
      const fitting = column + 1 < room.columns ? children.length : 0
      const self: { -readonly [K in keyof PlacedNode]: PlacedNode[K] } = put({
        id,
        column,
        row,
        ...(more.comesFrom && { comesFrom: more.comesFrom }),
      })
      if (more.parent && more.link) placed.push({ link: more.link, parent: more.parent, child: self })
      let rows = 0
      let next = 0
      for (; next < fitting && row + rows < room.rows; next++) {
        const child = children[next]!
        rows += place(child.id, child.children, column + 1, row + rows, { parent: self, link: child.link! })
      }
      if (next < children.length) {
        self.goesOn = letter(waiting.length - 1)
        waiting.push({ id, children: children.slice(next), comesFrom: self.goesOn })
      }
      return Math.max(1, rows)
    }
    const rows = place(piece.id, piece.children, 0, 0, piece.comesFrom ? { comesFrom: piece.comesFrom } : {})
    pieces.push({ nodes, links: placed, rows })
  }
  return { pieces, closing }
}
