/** A point in cells: whole numbers are the corners between them. */
export type CellPoint = readonly [x: number, y: number]

/**
 * Every cell that a straight stretch passes through, and how much of the stretch lies in it, 0…1. Neighbours in the walk share a
 * side, so that what is drawn with it has no gap for a step aslant.
 *
 * Source: J. Amanatides, A. Woo, A fast voxel traversal algorithm, Eurographics (1987).
 */
export function walkCells(
  [x0, y0]: CellPoint,
  [x1, y1]: CellPoint,
  visit: (column: number, row: number, part: number) => void,
): void {
  let column = Math.floor(x0)
  let row = Math.floor(y0)
  const lastColumn = Math.floor(x1)
  const lastRow = Math.floor(y1)
  const dx = x1 - x0
  const dy = y1 - y0
  const stepX = Math.sign(dx)
  const stepY = Math.sign(dy)
  const perColumn = stepX === 0 ? Infinity : Math.abs(1 / dx)
  const perRow = stepY === 0 ? Infinity : Math.abs(1 / dy)
  let nextX = stepX === 0 ? Infinity : (stepX > 0 ? column + 1 - x0 : x0 - column) * perColumn
  let nextY = stepY === 0 ? Infinity : (stepY > 0 ? row + 1 - y0 : y0 - row) * perRow
  let along = 0
  const most = Math.abs(lastColumn - column) + Math.abs(lastRow - row)
  for (let walked = 0; walked < most; walked++) {
    const next = Math.min(nextX, nextY, 1)
    visit(column, row, next - along)
    along = next
    if (nextX < nextY) {
      column += stepX
      nextX += perColumn
    } else {
      row += stepY
      nextY += perRow
    }
  }
  visit(column, row, 1 - along)
}

/** Calls with every run of cells whose centres lie inside rings, even-odd: first column, last column, row. */
export function fillRings(
  rings: readonly (readonly CellPoint[])[],
  columns: number,
  rows: number,
  run: (first: number, last: number, row: number) => void,
): void {
  for (let row = 0; row < rows; row++) {
    const y = row + 0.5
    const cuts: number[] = []
    for (const ring of rings) {
      for (let i = 0; i + 1 < ring.length; i++) {
        const [ax, ay] = ring[i]!
        const [bx, by] = ring[i + 1]!
        if (ay > y !== by > y) cuts.push(ax + ((y - ay) / (by - ay)) * (bx - ax))
      }
    }
    cuts.sort((a, b) => a - b)
    for (let k = 0; k + 1 < cuts.length; k += 2) {
      const first = Math.max(0, Math.ceil(cuts[k]! - 0.5))
      const last = Math.min(columns - 1, Math.floor(cuts[k + 1]! - 0.5))
      if (first <= last) run(first, last, row)
    }
  }
}
