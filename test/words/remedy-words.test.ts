import { expect, test } from 'vitest'
import type { StationId } from '../../src/plan/id'
import type { Circuit } from '../../src/plan/plan'
import type { Change } from '../../src/report/remedy-changes'
import { remedyWords } from '../../src/words/remedy-words'
import { tongueOf } from '../../src/words/tongue'
import { LINE, NET, SMALL_PLAN } from '../panel/small-plan'

const net = SMALL_PLAN.circuits.get(NET)!
const hut = 'hut' as StationId
const fed: Circuit = { ...net, supply: { type: 'battery-6', at: hut } }

test.each<readonly [Change, Circuit, string]>([
  [{ kind: 'wire', line: LINE, wire: 'wd-1a' }, net, 'Field wire WD-1A/TT on Hut – Ford'],
  [{ kind: 'second-pair', line: LINE }, net, 'A second pair beside Hut – Ford, joined to it at both ends'],
  [{ kind: 'pair-for-earth', line: LINE }, net, 'A pair in place of the earth return on Hut – Ford'],
  [{ kind: 'more-rods', line: LINE, rods: 3 }, net, '3 rods in place of one at each end of Hut – Ford'],
  [{ kind: 'move-supply', at: hut }, fed, 'The supply moved to Hut'],
  [{ kind: 'supply', type: 'unknown', at: hut }, net, 'unknown at Hut'],
  [{ kind: 'supply', type: 'unknown', at: hut }, fed, 'unknown as the supply'],
  [{ kind: 'more-cells', cells: 1 }, net, 'One more cell in series'],
  [{ kind: 'more-cells', cells: 2 }, net, '2 more cells in series'],
  [
    { kind: 'sets', from: 'crank-1000', to: 'crank-1600' },
    net,
    'Crank set, 1600 Ω ringer in place of Crank set, 1000 Ω ringer',
  ],
  [
    { kind: 'split', at: hut },
    net,
    'Split at Hut into circuits of their own, with a set on each to pass calls on',
  ],
])('%o is said to a crew', (change, circuit, words) => {
  expect(remedyWords([change], SMALL_PLAN, circuit, tongueOf(SMALL_PLAN, 'us'))).toBe(words)
})

test('two changes are said one after the other', () => {
  const changes: readonly Change[] = [
    { kind: 'second-pair', line: LINE },
    { kind: 'more-cells', cells: 1 },
  ]
  expect(remedyWords(changes, SMALL_PLAN, net, tongueOf(SMALL_PLAN, 'metric'))).toBe(
    'A second pair beside Hut – Ford, joined to it at both ends; One more cell in series',
  )
})
