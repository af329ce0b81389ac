/** @import { Mutant } from './mutants.mjs' */

/** @type {(file: string, tests: readonly string[]) => (fault: string, from: string, to: string) => Mutant} */
const inFile = (file, tests) => (fault, from, to) => ({ fault, file: `src/shelf/${file}`, from, to, tests })

const judge = inFile('judge-net.ts', ['test/shelf/nets-hold.test.ts', 'test/shelf/small-shelves.test.ts'])
const design = inFile('net-design.ts', ['test/shelf/net-design.test.ts'])
const plan = inFile('net-plan.ts', ['test/shelf/net-plan.test.ts'])
const ways = inFile('ways.ts', ['test/shelf/shelf-geometry.test.ts'])
const rank = inFile('rank-nets.ts', ['test/shelf/small-shelves.test.ts'])
const battery = inFile('battery.ts', ['test/shelf/net-design.test.ts'])
const least = inFile('least-wire.ts', ['test/shelf/shelf-geometry.test.ts'])
const kinds = inFile('wire-kinds.ts', ['test/shelf/earth-return.test.ts'])
const left = inFile('left.ts', ['test/shelf/earth-return.test.ts', 'test/shelf/small-shelves.test.ts'])
const joints = inFile('joint-trees.ts', ['test/shelf/joint-trees.test.ts'])

/** @type {readonly Mutant[]} */
export const SHELF = [
  judge(
    'a battery in one leg serves calls of all others',
    "kind !== 'series' || isAtSupply(a) || isAtSupply(b)",
    "kind !== 'series' || isAtSupply(a) || !isAtSupply(b)",
  ),
  judge('at worst a net of a shelf stands as it does today', 'worst: worst.verdict,', 'worst: verdict,'),
  design('a battery takes one cell off the shelf', 'cells[of.cell]! += of.each', 'cells[of.cell]! += 1'),
  design(
    'one telephone more than there are',
    'count <= country.sets[k]!.count',
    'count <= country.sets[k]!.count + 1',
  ),
  plan(
    'a reserve that the shelf has not',
    'if (spools.every(({ missingM }) => missingM === 0)) return plan',
    'if (spools.some(({ missingM }) => missingM >= 0)) return plan',
  ),
  ways('the odd end longer than its spool', 'if (near.wireM > wireM) {', 'if (near.wireM > 2 * wireM) {'),
  rank(
    'the most wire before the least',
    '    -metres(wireM + JOINT_WORTH_M * joints),\n    -splices',
    '    metres(wireM + JOINT_WORTH_M * joints),\n    -splices',
  ),
  battery('one cell fewer than there are', 'const cells = k + 1', 'const cells = Math.max(1, k)'),
  least(
    'a forest with a tree too many',
    'if (places.length - forest.length <= Math.max(1, groups)) break',
    'if (places.length - forest.length <= Math.max(2, groups)) break',
  ),
  kinds('a pair taken apart is three wires', 'count: 2 * count }] : []', 'count: 3 * count }] : []'),
  kinds('one single wire is a pair', 'Math.floor(count / 2) : count', 'count : count'),
  left(
    'one wire as pairs and taken apart in one net',
    'if (other !== kind && pool === wires[kind]!.pool) wireM[other] = 0',
    'if (other === kind && pool !== wires[kind]!.pool) wireM[other] = 0',
  ),
  joints(
    'a joint that saves less than it is worth',
    'wireM(joined) + worthM < wireM(tree)',
    'wireM(joined) + worthM > wireM(tree)',
  ),
  rank(
    'a net on which nobody can ring ranked by its margin first',
    '    -silent.length,\n    RANK[verdict],',
    '    RANK[verdict],\n    -silent.length,',
  ),
]
