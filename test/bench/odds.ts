import { conditionsOf } from '../../src/budget/conditions'
import { oddsOf } from '../../src/budget/odds'
import { BUILT_IN } from '../../src/catalog/built-in'
import { type BenchRow, medianMs } from './timing'

const GOAL_MS = 1000

/** A party line of five crank sets, every figure of which has its spread: 2,000 such circuits drawn and judged. */
export async function oddsOfParty(): Promise<BenchRow> {
  const wire = BUILT_IN.wires.find(({ id }) => id === 'wd-1a')!
  const set = BUILT_IN.sets.find(({ id }) => id === 'crank-1600')!
  const places = [0, 1, 2, 3, 4]
  const model = {
    stations: places.map((k) => `s${k}`),
    lines: places
      .slice(1)
      .map((k) => ({ id: `l${k}`, from: k - 1, to: k, wire, wireM: 3000, electrodeOhms: null })),
    sets: places.map((node) => ({ node, set })),
    supply: null,
  }
  const ms = await medianMs(() => oddsOf(model, conditionsOf('dry', 20), { samples: 2000, seed: 1 }))
  return {
    what: 'odds of a party line of five, 2,000 circuits drawn',
    ms,
    goals: [{ text: 'at most 1 s', met: ms <= GOAL_MS, kind: 'time' }],
  }
}
