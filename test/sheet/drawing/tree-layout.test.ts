import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cross, type Segment } from '../../../src/figure/geometry'
import { type Link, layOutTree, type PlacedLink } from '../../../src/sheet/drawing/tree-layout'

/** A random tree: every node but the first hangs on one before it. */
const tree = () =>
  fc
    .array(fc.nat(), { maxLength: 80 })
    .map((picks) => picks.map((pick, i): Link => ({ id: `l${i}`, a: `n${pick % (i + 1)}`, b: `n${i + 1}` })))

/** The link as it is drawn: out of the parent, down to the child's row, and to the child. */
const drawn = ({ parent, child }: PlacedLink): readonly Segment[] => {
  const bend = [parent.column + 0.5, child.row] as const
  return [
    [
      [parent.column, parent.row],
      [parent.column + 0.5, parent.row],
    ],
    [[parent.column + 0.5, parent.row], bend],
    [bend, [child.column, child.row]],
  ]
}

describe('a circuit diagram', () => {
  test('of a tree has no crossing, no two stations on one place, and shows each station and line', () => {
    fc.assert(
      fc.property(
        tree(),
        fc.integer({ min: 2, max: 5 }),
        fc.integer({ min: 1, max: 12 }),
        (links, columns, rows) => {
          const { pieces, closing } = layOutTree('n0', links, { columns, rows })
          expect(closing).toEqual([])
          for (const piece of pieces) {
            const segments = piece.links.flatMap(drawn)
            for (const [i, one] of segments.entries()) {
              for (const other of segments.slice(i + 1)) expect(cross(one, other)).toBe(false)
            }
            const places = piece.nodes.map(({ column, row }) => `${column} ${row}`)
            expect(new Set(places).size).toBe(places.length)
            expect(piece.nodes.every(({ column, row }) => column < columns && row < rows)).toBe(true)
          }
          const lines = pieces.flatMap((piece) => piece.links.map(({ link }) => link.id))
          expect(lines.toSorted()).toEqual(links.map(({ id }) => id).toSorted())
          const firsts = pieces.flatMap((piece) => piece.nodes.filter(({ comesFrom }) => !comesFrom))
          expect(firsts.map(({ id }) => id).toSorted()).toEqual(
            [...new Set(['n0', ...links.flatMap(({ a, b }) => [a, b])])].toSorted(),
          )
        },
      ),
    )
  })

  test('that goes on elsewhere says so at both ends, by the same letter', () => {
    fc.assert(
      fc.property(tree(), (links) => {
        const { pieces } = layOutTree('n0', links, { columns: 3, rows: 5 })
        const nodes = pieces.flatMap((piece) => piece.nodes)
        const out = nodes.flatMap(({ id, goesOn }) => (goesOn ? [`${id} ${goesOn}`] : []))
        const back = nodes.flatMap(({ id, comesFrom }) => (comesFrom ? [`${id} ${comesFrom}`] : []))
        expect(out.toSorted()).toEqual(back.toSorted())
        expect(new Set(out).size).toBe(out.length)
      }),
    )
  })

  // n0 — n1 — n2
  //  └────────┘
  test('of a ring draws a tree, and names the line that closes it', () => {
    const links = [
      { id: 'a', a: 'n0', b: 'n1' },
      { id: 'b', a: 'n1', b: 'n2' },
      { id: 'c', a: 'n2', b: 'n0' },
    ]
    const { pieces, closing } = layOutTree('n0', links, { columns: 4, rows: 4 })
    expect(pieces.flatMap((piece) => piece.links)).toHaveLength(2)
    expect(closing.map(({ id }) => id)).toEqual(['b'])
  })
})
