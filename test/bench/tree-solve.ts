import { rowsOfKind } from '../../src/budget/circuit-rows'
import { conditionsOf } from '../../src/budget/conditions'
import { constantsOf } from '../../src/budget/line-constants'
import { kilometreOf, piOf } from '../../src/budget/uniform-line'
import { VOICE_HZ } from '../../src/budget/voice-loss'
import { circuitSimulator, denseSolve, type Engine, type Task } from './other-engines'
import { randomTree } from './random-tree'
import { type BenchRow, median, medianMs, sideBySide } from './timing'

const TODAY = conditionsOf('dry', 20)
const GOAL_TIMES = 300
const RING_GOAL_TIMES = 200
/** Less than this and something has come undone. */
const RING_LEAST_TIMES = 90
const GOAL_EXPONENT = 1.1
/** Engines whose figures differ by more are not doing the same work. */
const SAME = 1e-3

const tree = randomTree(100, 20)
/** The same tree, with nothing remembered from the run before. */
const treeAnew = () => ({ ...tree, lines: [...tree.lines] })

const otherEngines = async (): Promise<readonly { by: string; engine: Engine }[]> => [
  { by: 'a circuit simulator (ngspice)', engine: await circuitSimulator() },
  { by: 'dense complex LU (mathjs)', engine: denseSolve },
]

const agree = (what: string, ours: number, theirs: number) => {
  if (!(Math.abs(theirs / ours - 1) < SAME)) throw new Error(`${what} says ${theirs}, not ${ours}`)
}

/** Speech between each two of 20 sets on a tree of 100 lines: the whole of that budget. */
export async function speechOnTree(): Promise<BenchRow> {
  const rows = rowsOfKind('voice', tree, TODAY)
  const ms = await medianMs(() => rowsOfKind('voice', treeAnew(), TODAY))
  const against: { by: string; ms: number }[] = []
  const sample = rows.filter((_, k) => k % 40 === 0)
  for (const { by, engine } of await otherEngines()) {
    const times: number[] = []
    for (const row of sample) {
      const [from, to] = [row.from, row.to].map(
        (name) => tree.sets.find(({ node }) => tree.stations[node] === name)!,
      )
      const ends = [from!.node, to!.node]
      const task: Task = {
        nodeCount: tree.stations.length,
        lines: tree.lines,
        onHook: tree.sets.filter(({ node }) => !ends.includes(node)),
        source: { node: from!.node, volts: 1, ohms: from!.set.offHook.acOhms, hz: VOICE_HZ },
        load: { node: to!.node, ohms: to!.set.offHook.acOhms },
      }
      const start = performance.now()
      const volts = (await engine(task))[to!.node]!
      times.push(performance.now() - start)
      agree(by, row.lossDb, 20 * Math.log10(0.5 / volts))
    }
    against.push({ by, ms: median(times) * (rows.length / 2) })
  }
  return {
    what: `Speech on a tree of 100 lines, ${rows.length / 2} pairs of sets (the others: ${sample.length} pairs, scaled)`,
    ms,
    against,
    goals: [
      {
        kind: 'ratio',
        text: `${GOAL_TIMES} × faster`,
        met: against.every((other) => other.ms / ms >= GOAL_TIMES),
      },
    ],
  }
}

/** A π section for each line of the tree, each with the constants of its own wire: what any solver has to begin with. */
function constantsAlone(): number {
  const { hz } = tree.supply!.supply.ring!
  let sum = 0
  for (const line of tree.lines) {
    const kilometre = kilometreOf(constantsOf(line, TODAY), hz)
    sum += piOf(kilometre, line.wireM / 1000, null)[0]!
  }
  return sum
}

/** One ring source on the same tree: a single solve, where a general engine stands best. */
export async function ringOnTree(): Promise<BenchRow> {
  const ring = tree.supply!.supply.ring!
  const task: Task = {
    nodeCount: tree.stations.length,
    lines: tree.lines,
    onHook: tree.sets,
    source: { node: tree.supply!.node, ...ring },
  }
  const rows = rowsOfKind('ringing', tree, TODAY)
  const others = await otherEngines()
  for (const { by, engine } of others) {
    const volts = await engine(task)
    for (const { to, volts: ours } of rows) agree(by, ours, volts[tree.stations.indexOf(to)]!)
  }
  const [ms, again, constantsMs, ...theirs] = (await sideBySide(
    () => rowsOfKind('ringing', treeAnew(), TODAY),
    () => rowsOfKind('ringing', tree, TODAY),
    constantsAlone,
    ...others.map(
      ({ engine }) =>
        () =>
          engine(task),
    ),
  )) as [number, number, number, ...number[]]
  const simulatorMs = theirs[0]!
  return {
    what: 'One ring source on the same tree',
    ms,
    figures: `${(again / constantsMs).toFixed(1)} × its line constants alone where the tree is known, ${(ms / constantsMs).toFixed(1)} × where it is new`,
    against: others.map(({ by }, k) => ({ by, ms: theirs[k]! })),
    goals: [
      {
        kind: 'time',
        text: `${RING_GOAL_TIMES} × the circuit simulator`,
        met: simulatorMs / ms >= RING_GOAL_TIMES,
      },
      {
        kind: 'ratio',
        text: `at least ${RING_LEAST_TIMES} × the circuit simulator, its own code compiled`,
        met: simulatorMs / ms >= RING_LEAST_TIMES,
      },
      { kind: 'ratio', text: 'at most 3 × its line constants alone', met: again / constantsMs <= 3 },
    ],
  }
}

/** How the time grows from 10 lines to 10,000: the slope of the line fitted through four sizes, log against log. */
export async function growthWithLines(): Promise<BenchRow> {
  const points: { x: number; y: number; ms: number }[] = []
  for (const size of [10, 100, 1000, 10_000]) {
    const model = randomTree(size, 8)
    const ms = await medianMs(() => rowsOfKind('ringing', { ...model, lines: [...model.lines] }, TODAY))
    points.push({ x: Math.log(size), y: Math.log(ms), ms })
  }
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
  const [meanX, meanY] = [mean(points.map(({ x }) => x)), mean(points.map(({ y }) => y))]
  const slope =
    mean(points.map(({ x, y }) => (x - meanX) * (y - meanY))) / mean(points.map(({ x }) => (x - meanX) ** 2))
  return {
    what: `A tree of 10,000 lines; from 10 on the time grows as the lines to the power ${slope.toFixed(2)}`,
    ms: points.at(-1)!.ms,
    goals: [{ kind: 'growth', text: `power ≤ ${GOAL_EXPONENT}`, met: slope <= GOAL_EXPONENT }],
  }
}
