import Graph from 'graphology'
import { dijkstra } from 'graphology-shortest-path'
import { expect, test } from 'vitest'
import { planeAbout } from '../../src/geo/plane'
import type { Position } from '../../src/geo/position'
import type { HazardId } from '../../src/plan/id'
import type { Hazard } from '../../src/plan/plan'
import { stepCost, stepsOn } from '../../src/route/cost-grid'
import { leastMeeting } from '../../src/route/least-meeting'
import { routeGround } from '../../src/route/route-ground'
import { DEFAULT_ROUTE_WEIGHTS } from '../../src/route/route-weights'

const plane = planeAbout([[9, 47]])
const at = (east: number, north: number) => plane.toPosition([east, north]) as Position
const PLACES = [at(-700, -300), at(650, -420), at(40, 720)]
const CELLS = 700

/** About the Fermat point of the three: nobody may make a joint in it. */
const PIT: Hazard = {
  id: 'pit' as HazardId,
  hazard: 'keep-out',
  name: 'Pit',
  geometry: {
    type: 'Polygon',
    coordinates: [[at(-250, -250), at(250, -250), at(250, 250), at(-250, 250), at(-250, -250)]],
  },
}

test.each([[[]], [[PIT]]])(
  'three ways meet where their costs, by a graph library, add to the least',
  (hazards) => {
    const found = leastMeeting(
      PLACES,
      { hazards, weights: DEFAULT_ROUTE_WEIGHTS, mostCells: CELLS },
      undefined,
    )!
    const { grid, toCells, cellAt } = routeGround(PLACES, hazards, DEFAULT_ROUTE_WEIGHTS, undefined, CELLS)
    const steps = stepsOn(grid)
    const graph = new Graph({ type: 'directed' })
    const size = grid.columns * grid.rows
    for (let cell = 0; cell < size; cell++) graph.addNode(cell)
    for (let cell = 0; cell < size; cell++)
      for (let m = 0; m < steps.count; m++) {
        const column = (cell % grid.columns) + steps.dx[m]!
        const row = Math.floor(cell / grid.columns) + steps.dy[m]!
        if (column < 0 || row < 0 || column >= grid.columns || row >= grid.rows) continue
        const weight = stepCost(grid, steps, cell, m)
        if (weight < Infinity) graph.addDirectedEdge(cell, row * grid.columns + column, { weight })
      }
    const sums = new Map<number, number>()
    for (const place of PLACES) {
      const start = cellAt(toCells(place))
      const ways = dijkstra.singleSource(graph, start)
      for (const [cell, path] of Object.entries(ways)) {
        const cost = path
          .slice(1)
          .reduce((sum, to, k) => sum + graph.getEdgeAttribute(graph.edge(path[k]!, to)!, 'weight'), 0)
        sums.set(Number(cell), (sums.get(Number(cell)) ?? 0) + cost)
      }
    }
    const least = Math.min(...sums.values())
    const ours = sums.get(cellAt(toCells(found)))!
    // The sums are of the same figures in another order.
    expect(ours / least).toBeCloseTo(1, 6)
    const [east, north] = plane.toPlane(found)
    expect(hazards.length > 0 && Math.abs(east) < 250 && Math.abs(north) < 250).toBe(false)
  },
)
