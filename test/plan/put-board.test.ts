import { expect, test } from 'vitest'
import { BUILT_IN } from '../../src/catalog/built-in'
import { smallestBoard } from '../../src/catalog/smallest-board'
import { setSet, setSupply } from '../../src/plan/circuit-edits'
import type { CircuitId, StationId } from '../../src/plan/id'
import { meetingPlace, portsNeeded } from '../../src/plan/lines-at-board'
import { putBoard } from '../../src/plan/put-board'
import { starPlan } from './star-plan'

const [STAR, HUB] = ['star' as CircuitId, 'hub' as StationId]
const kindOf = (type: string | undefined) => BUILT_IN.supplies.find(({ id }) => id === type)
const bare = (km: readonly number[]) => setSupply(starPlan({ km }), STAR, null)

test('the smallest with enough ports is taken, none where all are too small', () => {
  for (const ports of [1, 4, 5, 13, 30]) {
    const found = smallestBoard(BUILT_IN.supplies, 'board', ports)!
    expect(found.ports).toBeGreaterThanOrEqual(ports)
    for (const { kind, ports: others } of BUILT_IN.supplies)
      if (kind === 'board' && others! >= ports) expect(found.ports).toBeLessThanOrEqual(others!)
  }
  expect(smallestBoard(BUILT_IN.supplies, 'board', 1000)).toBeUndefined()
})

test('a board is put where lines meet, and has room for all of them', () => {
  const plan = bare([1, 2, 3, 4, 5])
  const circuit = plan.circuits.get(STAR)!
  expect(meetingPlace(plan, circuit)).toBe(HUB)
  expect(portsNeeded(plan, circuit, HUB, 'board')).toBe(5)
  const { supply, sets } = putBoard(plan, STAR, HUB, 'crank-1600')!.circuits.get(STAR)!
  expect(supply!.at).toBe(HUB)
  expect(kindOf(supply!.type)).toMatchObject({ kind: 'board', ports: 6 })
  expect(sets).toEqual(circuit.sets)
})

test('where no telephone stands yet each station gets one, the operator too', () => {
  const plan = bare([1, 2])
  const none = [...plan.circuits.get(STAR)!.sets.keys()].reduce(
    (next, at) => setSet(next, STAR, at, null),
    plan,
  )
  const { sets } = putBoard(none, STAR, HUB, 'crank-1600')!.circuits.get(STAR)!
  expect([...sets.keys()].sort()).toEqual(['hub', 't1', 't2'])
})

test('telephones that live on the current of others get an exchange, whose own telephone takes a port as well', () => {
  const common = BUILT_IN.sets.find(({ talk }) => talk === 'common')!.id
  const plan = setSet(
    setSupply(starPlan({ km: [1, 2], operator: true }), STAR, null),
    STAR,
    't1' as StationId,
    common,
  )
  const circuit = plan.circuits.get(STAR)!
  expect(portsNeeded(plan, circuit, HUB, 'exchange')).toBe(3)
  expect(kindOf(putBoard(plan, STAR, HUB, 'crank-1600')!.circuits.get(STAR)!.supply!.type)).toMatchObject({
    kind: 'exchange',
    ports: 4,
  })
})
