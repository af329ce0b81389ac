// @vitest-environment page
import { expect, test } from 'vitest'
import { shelfOf } from '../../../src/files/parse-shelf'
import { HookUp } from '../../../src/panel/shelf/hook-up'
import { shelfAnswer } from '../../../src/shelf/shelf-answer'
import { page } from '../page'

function stepsOf(lengthM: number) {
  const shelf = shelfOf({
    places: ['Camp', 'Ford'],
    distancesM: [
      [0, 1300],
      [1300, 0],
    ],
    have: {
      wires: [{ wire: 'wd-1a', lengthM, count: 1 }],
      sets: [{ set: 'crank-1600', count: 2 }],
      rods: [{ rod: 'rod-1-5', count: 2 }],
    },
  })
  if (!shelf.ok) throw new Error(JSON.stringify(shelf.problems))
  const { root, openAll } = page(<HookUp plan={shelfAnswer(shelf.value).nets[0]!.plan} />)
  openAll()
  return {
    steps: [...root.querySelectorAll('li')].map(({ textContent }) => textContent),
    wire: root.querySelector('.hook-up .wire')!.getAttribute('d')!,
  }
}

test('one wire with a rod at either end is not drawn and told as a pair', () => {
  const pair = stepsOf(1700)
  expect(pair.steps[0]).toBe('Mark one wire of the pair at both ends before it is laid.')
  expect(pair.steps[1]).toContain('the other wire to L2')
  const earth = stepsOf(900)
  expect(earth.steps[0]).toContain('drive a rod at either end')
  expect(earth.steps[1]).toBe('At Camp: the wire to L1, the earth rod to L2.')
  // Three strokes of earth at each of two rods; a pair has none.
  expect(earth.wire.match(/h(18|12|6)(?=M|$)/g)).toHaveLength(6)
  expect(pair.wire.match(/h(18|12|6)(?=M|$)/g)).toBeNull()
})
