import Graph from 'graphology'
import { dijkstra } from 'graphology-shortest-path'
import { describe, expect, test } from 'vitest'
import { type CostGrid, stepCost, stepsOn } from '../../src/route/cost-grid'
import { costsFrom, leastCostPath, pathTo } from '../../src/route/least-cost-path'
import { seeded } from '../terrain/seeded'

/** Grids of hills, bogs, barred cells, tolls and unknown heights. */
function randomGrid(random: () => number): CostGrid {
  const columns = 4 + Math.floor(random() * 12)
  const rows = 4 + Math.floor(random() * 12)
  const size = columns * rows
  const each = (value: () => number) => Float32Array.from({ length: size }, value)
  return {
    columns,
    rows,
    cellM: 1 + random() * 40,
    heightsM: each(() => (random() < 0.05 ? Number.NaN : random() * 60)),
    perM: each(() => (random() < 0.2 ? Infinity : 0.5 + random() * 4)),
    toll: each(() => (random() < 0.2 ? random() * 300 : 0)),
    climb: random() * 8,
  }
}

/** The same ground as a graph for a general-purpose library: a node a cell, an edge a step that is not barred. */
function graphOf(grid: CostGrid): Graph {
  const graph = new Graph({ type: 'directed' })
  const steps = stepsOn(grid)
  const size = grid.columns * grid.rows
  for (let cell = 0; cell < size; cell++) graph.addNode(String(cell))
  for (let cell = 0; cell < size; cell++) {
    for (let m = 0; m < steps.count; m++) {
      const column = (cell % grid.columns) + steps.dx[m]!
      const row = Math.floor(cell / grid.columns) + steps.dy[m]!
      if (column < 0 || row < 0 || column >= grid.columns || row >= grid.rows) continue
      const weight = stepCost(grid, steps, cell, m)
      if (weight < Infinity) graph.addEdge(String(cell), String(row * grid.columns + column), { weight })
    }
  }
  return graph
}

test('on 200 random grids a path costs what an exhaustive Dijkstra of graphology finds', () => {
  const random = seeded(12)
  let reached = 0
  for (let run = 0; run < 200; run++) {
    const grid = randomGrid(random)
    const size = grid.columns * grid.rows
    const [start, goal] = [Math.floor(random() * size), Math.floor(random() * size)]
    if (grid.perM[start] === Infinity || start === goal) continue
    const graph = graphOf(grid)
    const nodes: string[] | undefined = dijkstra.singleSource(graph, String(start))[String(goal)]
    const path = leastCostPath(grid, start, goal)
    if (!nodes) {
      expect(path).toBeUndefined()
      continue
    }
    reached++
    const along = (cells: readonly (string | number)[]) =>
      cells.slice(1).reduce<number>((sum, cell, i) => {
        return sum + (graph.getEdgeAttribute(String(cells[i]), String(cell), 'weight') as number)
      }, 0)
    expect(path!.cost).toBeCloseTo(along(nodes), 6)
    expect(along(path!.cells)).toBeCloseTo(path!.cost, 6)
    expect(costsFrom(grid, start)!.costs[goal]).toBeCloseTo(path!.cost, 6)
  }
  expect(reached).toBeGreaterThan(120)
})

test('a step costs the same both ways', () => {
  const grid = randomGrid(seeded(3))
  const steps = stepsOn(grid)
  const middle = Math.floor(grid.rows / 2) * grid.columns + Math.floor(grid.columns / 2)
  for (let m = 0; m < steps.count; m++) {
    const back = Array.from({ length: steps.count }, (_, k) => k).find(
      (k) => steps.dx[k] === -steps.dx[m]! && steps.dy[k] === -steps.dy[m]!,
    )!
    const to = middle + steps.offset[m]!
    expect(stepCost(grid, steps, to, back)).toBeCloseTo(stepCost(grid, steps, middle, m), 3)
  }
})

const plain = (columns: number, rows: number): CostGrid => ({
  columns,
  rows,
  cellM: 10,
  heightsM: new Float32Array(columns * rows),
  perM: new Float32Array(columns * rows).fill(1),
  toll: new Float32Array(columns * rows),
  climb: 4,
})

describe('a path', () => {
  test('over a plain is as long as the straight line, within 3 %', () => {
    const { cost } = leastCostPath(plain(60, 60), 0, 59 * 60 + 37)!
    expect(cost / (10 * Math.hypot(37, 59))).toBeLessThan(1.03)
  })

  test('pays a toll once on its way across, wherever it crosses', () => {
    const grid = plain(30, 30)
    for (let row = 0; row < 30; row++) grid.toll[row * 30 + 15] = 500
    expect(leastCostPath(grid, 300, 329)!.cost).toBeCloseTo(290 + 500, 6)
  })

  test('slips through no wall one cell thick, not even with a knight’s move', () => {
    const grid = plain(30, 30)
    for (let row = 0; row < 30; row++) grid.perM[row * 30 + 15] = Infinity
    expect(leastCostPath(grid, 300, 329)).toBeUndefined()
  })

  test('from a barred cell goes nowhere', () => {
    const grid = plain(5, 5)
    grid.perM[0] = Infinity
    expect(leastCostPath(grid, 0, 24)).toBeUndefined()
    expect(pathTo(costsFrom(grid, 0)!, 24)).toEqual([])
  })

  test('that is stopped is none, and tells of its progress', () => {
    const told: number[] = []
    expect(leastCostPath(plain(300, 300), 0, 89_999, { shouldStop: () => true })).toBeUndefined()
    leastCostPath(plain(300, 300), 0, 89_999, { onProgress: (part) => told.push(part) })
    expect(told.at(-1)).toBe(1)
  })
})
