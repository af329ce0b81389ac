import { expect, test } from 'vitest'
import { Journal } from '../../src/journal/journal'
import type { StationId } from '../../src/plan/id'
import { EMPTY_PLAN, type Plan } from '../../src/plan/plan'
import { addStation, renameStation } from '../../src/plan/station-edits'
import { setNote, setTitle } from '../../src/plan/text-edits'
import { packedStep } from '../../src/share/packed-step'
import { invitation, keysOfInvitation, makeKeys, passOf, tagOf } from '../../src/share/plan-keys'
import { Presence } from '../../src/share/presence'
import { Refusals } from '../../src/share/refusals'
import { beginningIn, Room } from '../../src/share/room'
import { makeHand, opened, sealed } from '../../src/share/sealed'

const base = addStation(EMPTY_PLAN, { id: 'a' as StationId, name: 'A', position: [10, 47] })
const keys = makeKeys()
const room = (of = keys) => new Room(of, new Journal('one', base), of.write && makeHand(of.write))
/** What a hand writes that leads from one plan to the next, as an envelope. */
const written = (from: Room, plan: Plan, next: Plan, at: number, name?: string) =>
  from.step(from.journal.write(from.hand!.name, plan, next, at), name)!
const renamed = (plan: Plan, name: string) => renameStation(plan, 'a' as StationId, name)

test('what one writes reads the same to another, and a further one begins with all of it', () => {
  const [one, two] = [room(), room()]
  expect(two.receive(written(one, base, renamed(base, 'Camp'), 1, 'Ada'))).toMatchObject({
    refused: [],
    changed: new Set(['stations/a/name']),
  })
  expect(two.view.plan.stations.get('a' as StationId)?.name).toBe('Camp')
  const begun = beginningIn(two.beginning(7)!, keys)!
  expect(begun.upTo).toBe(7)
  expect(begun.journal.mended().plan).toEqual(one.view.plan)
  // A name goes along once, and whoever comes anew has it from the beginning.
  expect(two.names.of(one.hand!.name)).toBe('Ada')
  expect(begun.names).toEqual({ [one.hand!.name]: 'Ada' })
  expect(two.names.of('k-nobody')).toBe('Somebody (-nob)')
})

test('an envelope that comes twice, or in another’s name, or from nobody admitted, does nothing', () => {
  const [one, two] = [room(), room()]
  const bytes = written(one, base, renamed(base, 'Camp'), 1)
  two.receive(bytes)
  expect(two.receive(bytes)).toMatchObject({ added: [], refused: [] })
  // Every byte of it counts.
  for (const at of [1, 40, 100, 170, bytes.length - 1]) {
    const torn = bytes.slice()
    torn[at]! ^= 1
    expect(room({ ...keys }).receive(torn).refused, `byte ${at}`).toHaveLength(1)
  }
  // Somebody who can read has the key that seals, and admits himself.
  const stranger = makeHand(makeKeys().write!)
  const forged = sealed(
    { step: packedStep([{ hand: 'x', number: 1, at: 5, key: 'plan//title', value: 'Mine', over: [] }]) },
    stranger,
    keys,
  )
  expect(two.receive(forged).refused[0]).toMatch(/nobody admitted/)
  expect(two.view.plan.title).toBe(base.title)
})

test('whose an edit is follows from the signature: numbers of another hand cannot be used up', () => {
  const [one, two] = [room(), room()]
  const hostile = makeHand(keys.write!)
  const claimed = packedStep([
    { hand: one.hand!.name, number: 1, at: 5, key: 'plan//title', value: 'Forged', over: [] },
  ])
  two.receive(sealed({ step: claimed }, hostile, keys))
  expect(two.receive(written(one, base, setTitle(base, 'True'), 9)).added).toHaveLength(1)
  expect(two.journal.seen.get(one.hand!.name)).toBe(1)
  expect(two.view.plan.title).toBe('True')
})

test.each([
  ['nothing', {}],
  ['a step that is none', { step: [1, 2, 'x'] }],
  ['a place off the globe', { step: [1, 2, [{ k: 'stations/a/position', v: [999, 0] }]] }],
  ['a beginning that is none', { begin: { plan: '{}', state: { seen: { x: 5 } }, upTo: 0 } }],
  [
    'a count that would leave true edits unheard',
    { begin: { state: { id: 'one', seen: { x: 1e15 }, standing: [], made: [], ranks: {} } } },
  ],
])('%s is refused in a sentence, and the plan goes on', (_, value) => {
  const two = room()
  const { refused, added } = two.receive(sealed(value, makeHand(keys.write!), keys))
  expect([refused.length, added.length]).toEqual([1, 0])
  expect(refused[0]).toMatch(/^[A-Z].*\.$/)
  expect(two.view.plan).toEqual(base)
})

test('an invitation carries the keys to write or to read, and says when it has not come whole', () => {
  const toWrite = keysOfInvitation(`#${invitation(keys, true)}`)!
  const toRead = keysOfInvitation(`#${invitation(keys, false)}`)!
  expect(toWrite).toEqual(keys)
  expect(toRead).toEqual({ ...keys, write: null })
  expect(tagOf(toRead)).toBe(tagOf(keys))
  expect(passOf(toRead)).toEqual({ read: passOf(keys).read, write: null })
  expect(keysOfInvitation('#plan=abc')).toBeUndefined()
  expect(keysOfInvitation(`#${invitation(keys, true).slice(0, -3)}`)).toBeNull()
  // The box is told neither key, and two plans have nothing in common.
  const told = JSON.stringify([tagOf(keys), passOf(keys)])
  for (const secret of [keys.seal, keys.write!])
    expect(told).not.toContain(Buffer.from(secret).toString('base64url'))
  expect(tagOf(makeKeys())).not.toBe(tagOf(keys))
})

test('who reads writes nothing, and opens what others write', () => {
  const one = room()
  const reader = room(keysOfInvitation(invitation(keys, false))!)
  reader.receive(written(one, base, setNote(base, 'to all'), 1))
  expect(reader.view.plan.note).toBe('to all')
  expect(reader.hand).toBeNull()
  expect(() => reader.moved()).toThrow()
})

test('names of stations stand nowhere in an envelope', () => {
  const one = room()
  const text = Buffer.from(written(one, base, renamed(base, 'Powder store'), 1)).toString('latin1')
  expect(text).not.toContain('Powder')
  expect(opened(Buffer.from(text, 'latin1'), keys)).toMatchObject({ hand: one.hand!.name })
})

test('that the plan has moved is heard from a hand that may write, and changes nothing', () => {
  const [one, two] = [room(), room()]
  expect(two.receive(one.moved())).toMatchObject({ moved: true, hand: one.hand!.name, added: [] })
})

test('others are there as long as they are heard, and where they were is known for longer', () => {
  const here = new Presence('me')
  const word = { name: 'Ada', at: 'stations/a/name', on: 'lines/l1/' }
  expect(here.hear('ada', word, 1000)).toBe(true)
  expect(here.hear('ada', word, 2000)).toBe(false)
  expect(here.hear('me', word, 1000)).toBe(false)
  expect(here.now(5000)).toMatchObject([word])
  const spot = { position: [10, 47], accuracyM: 8, atMs: 9e12 }
  here.hear('ada', { ...word, spot }, 3000)
  expect(here.now(60_000)).toEqual([])
  // Nobody was anywhere in the time to come.
  expect(here.spots()).toMatchObject([{ hand: 'ada', spot: { position: [10, 47], atMs: 3000 } }])
})

test.each([
  ['no word', null],
  ['no name', { at: '', on: '' }],
  ['a name that is a list', { name: ['x'], at: '' }],
])('%s of who is where is not heard', (_, word) => {
  expect(new Presence('me').hear('x', word, 1)).toBe(false)
})

test.each([
  ['off the globe', { position: [999, 0], accuracyM: 1, atMs: 1 }],
  ['no number', { position: ['a', 0], accuracyM: 1, atMs: 1 }],
  ['with no accuracy', { position: [1, 1], atMs: 1 }],
])('a place %s is none', (_, spot) => {
  const here = new Presence('me')
  here.hear('x', { name: 'X', at: '', on: '', spot }, 1)
  expect(here.now(2)).toHaveLength(1)
  expect(here.spots()).toEqual([])
})

test('a step or a plan that no box takes for its size makes no envelope', () => {
  const one = room()
  const large = setNote(base, 'x'.repeat(33 * 1024 * 1024))
  const edits = one.journal.write(one.hand!.name, base, large, 1)
  expect(one.step(edits)).toBeUndefined()
  expect(one.beginning(0)).toBeUndefined()
  one.journal.write(one.hand!.name, large, base, 2)
  expect(beginningIn(one.beginning(0)!, keys)!.journal.mended().plan).toEqual(base)
})

test('nonsense is told in one sentence however often it comes, and once of each who sends it', () => {
  const refusals = new Refusals()
  for (let at = 0; at < 1000; at++) refusals.add([`Edit ${at} cannot be.`], at % 2 ? 'Eve' : '')
  expect(refusals.words()).toBe(
    '1000 times something came in that can be no part of this plan, and was left out. The first time: Edit 0 cannot be. It came from Eve.',
  )
  refusals.putAway()
  refusals.add(['Again.'], 'Eve')
  expect(refusals.words()).toBe('')
  refusals.add(['New.'], 'Mallory')
  expect(refusals.words()).toBe('New. It came from Mallory.')
})
