import { readFileSync } from 'node:fs'
import Graph from 'graphology'
import { dijkstra } from 'graphology-shortest-path'
import { parsePlan } from '../../src/files/parse-plan'
import { measurePlan } from '../../src/measure/measure-line'
import { type Further, withFurther } from '../../src/plan/further-line'
import type { CircuitId, StationId } from '../../src/plan/id'
import { farShades } from '../../src/report/far-shades'
import { reportPlan } from '../../src/report/report-plan'
import { stepCost, stepsOn } from '../../src/route/cost-grid'
import { costsFrom } from '../../src/route/least-cost-path'
import { nearRoutes } from '../../src/route/near-routes'
import { routeGround } from '../../src/route/route-ground'
import { DEFAULT_ROUTE_WEIGHTS } from '../../src/route/route-weights'
import type { BenchRow } from './timing'
import { medianMs } from './timing'

const FIRST_GOAL_MS = 750
const WHOLE_GOAL_MS = 5000
const CORRIDOR_GOAL_MS = 3000

function demo() {
  const plan = parsePlan(readFileSync('public/demo.plan.geojson', 'utf8'))
  if (!plan.ok) throw new Error('the demo does not read')
  return plan.value
}

/** The shades about a station of a party line of the demo: the first, coarse, then all; beside as many reports as a shade has places. */
export async function shadesAboutStation(): Promise<BenchRow> {
  const plan = demo()
  const from = 'weir' as StationId
  const station = plan.stations.get(from)!
  const circuit = [...plan.circuits.values()].find(({ sets }) => sets.has(from))!
  const further: Further = {
    ...{ from, name: '', circuit: circuit.id as CircuitId, bends: [], wire: 'wd-1a', lay: 'surface' },
    ...{ to: [station.position[0] + 0.001, station.position[1]], set: circuit.sets.get(from)!, supply: null },
    ids: { station: 'far', line: 'far-line', circuit: 'far-net' } as unknown as Further['ids'],
  }
  const drawn = withFurther(plan, further)
  const question = {
    ...{ plan: drawn, line: further.ids.line, measured: measurePlan(drawn) },
    ...{ from: station.position, laidM: 0 },
  }
  let firstMs = 0
  const ms = await medianMs(() => {
    const start = performance.now()
    firstMs = 0
    farShades(question, undefined, () => {
      firstMs ||= performance.now() - start
    })
  })
  const places = 400
  const reportMs = await medianMs(() => {
    // Another place each time, so that nothing is remembered.
    const to = [station.position[0] + 0.001 + Math.random() * 1e-4, station.position[1]] as const
    reportPlan(withFurther(plan, { ...further, to }))
  })
  return {
    what: `Shades of how far it could go from a station of a party of ${circuit.sets.size}`,
    ms,
    figures: `the first after ${firstMs.toFixed(0)} ms`,
    against: [{ by: `a report at each of ${places} places, an even grid of 20 × 20`, ms: reportMs * places }],
    goals: [
      {
        kind: 'time',
        text: `first shades under ${FIRST_GOAL_MS} ms, a second with the hand's rest`,
        met: firstMs < FIRST_GOAL_MS,
      },
      { kind: 'time', text: 'all of them in 5 s', met: ms < WHOLE_GOAL_MS },
    ],
  }
}

/** The corridor and other ways of 3 km of the demo's ground; its two cost trees beside a general-purpose graph on a coarse grid. */
export async function corridorOfRoute(): Promise<BenchRow> {
  const plan = demo()
  const [from, to] = ['camp', 'kiln'].map((id) => plan.stations.get(id as StationId)!.position) as [
    Further['to'],
    Further['to'],
  ]
  const hazards = [...plan.hazards.values()]
  const ms = await medianMs(() => nearRoutes({ from, to, hazards, sharePct: 20 }))
  const { grid, toCells, cellAt } = routeGround([from, to], hazards, DEFAULT_ROUTE_WEIGHTS, undefined, 2500)
  const steps = stepsOn(grid)
  const graph = new Graph({ type: 'directed' })
  const size = grid.columns * grid.rows
  for (let cell = 0; cell < size; cell++) graph.addNode(cell)
  for (let cell = 0; cell < size; cell++) {
    for (let m = 0; m < steps.count; m++) {
      const column = (cell % grid.columns) + steps.dx[m]!
      const row = Math.floor(cell / grid.columns) + steps.dy[m]!
      if (column < 0 || row < 0 || column >= grid.columns || row >= grid.rows) continue
      const weight = stepCost(grid, steps, cell, m)
      if (weight < Infinity) graph.addDirectedEdge(cell, row * grid.columns + column, { weight })
    }
  }
  const start = cellAt(toCells(from))
  const treeMs = await medianMs(() => costsFrom(grid, start))
  const graphMs = await medianMs(() => dijkstra.singleSource(graph, start, 'weight'))
  return {
    what: 'Corridor and other ways of a line of 2.5 km',
    ms,
    figures: `a cost tree of ${size} cells ${treeMs.toFixed(1)} ms, graphology ${graphMs.toFixed(0)} ms`,
    goals: [
      { kind: 'time', text: 'under 3 s', met: ms < CORRIDOR_GOAL_MS },
      {
        kind: 'ratio',
        text: 'its tree 20 times as fast as a general-purpose graph',
        met: graphMs > 20 * treeMs,
      },
    ],
  }
}
