import { expect, test } from 'vitest'
import { forgetThings, memoryOfEach, memoryOfRow } from '../src/memo'

const things = (count: number) => Array.from({ length: count }, (_, k) => ({ k }))

/** A row that counts what it reckons. */
function counted() {
  const row = memoryOfRow<{ readonly k: number }, string>()
  let reckoned = 0
  return {
    ask: (each: readonly { readonly k: number }[], from: readonly unknown[], own: readonly unknown[]) => {
      reckoned = 0
      const told = row(each, from, [own], ({ k }, place) => {
        reckoned++
        return `${k} ${own[place]} ${from.join()}`
      })
      expect(told).toEqual(each.map(({ k }, place) => `${k} ${own[place]} ${from.join()}`))
      return { told, reckoned }
    },
  }
}

test('of a row only what is another, or follows from another, is reckoned anew', () => {
  const { ask } = counted()
  const row = things(100)
  const own = row.map(({ k }) => k * 2)
  const first = ask(row, ['a'], own)
  expect(first.reckoned).toBe(100)
  const again = ask([...row], ['a'], [...own])
  expect(again.reckoned).toBe(0)
  expect(again.told).toBe(first.told)
  const edited = row.with(7, { k: 7000 })
  expect(ask(edited, ['a'], own).reckoned).toBe(1)
  expect(ask(edited, ['a'], own.with(8, -1)).reckoned).toBe(1)
  expect(ask(row, ['b'], own).reckoned).toBe(100)
})

test('a row that has moved up, lost some or got some is taken over where its things stand now', () => {
  const { ask } = counted()
  const row = things(100)
  const own = row.map(({ k }) => k)
  const without = (list: readonly number[], at: number) => list.toSpliced(at, 1)
  ask(row, [], own)
  expect(ask(row.toSpliced(10, 1), [], without(own, 10)).reckoned).toBe(0)
  expect(ask(row, [], own).reckoned).toBe(1)
  const turned = row.toReversed()
  // So many others at their old places could be edits; what follows is looked for elsewhere.
  expect(ask(turned, [], own.toReversed()).reckoned).toBeLessThan(10)
})

test('what is remembered of things is let go of when another document comes', () => {
  const each = memoryOfEach<object, object>()
  const thing = {}
  const ask = () => each(thing, [], () => ({}))
  const before = ask()
  expect(ask()).toBe(before)
  forgetThings()
  expect(ask()).not.toBe(before)
})
