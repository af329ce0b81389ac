import { expect, test } from 'vitest'
import { renameCircuit, setSet, setSupply } from '../../src/plan/circuit-edits'
import {
  addStation,
  moveStation,
  noteStation,
  removeStation,
  renameStation,
} from '../../src/plan/station-edits'
import { c, circuitsIn, drawnNet, l, s } from './drawn-net'

test('a station that moves leaves every other thing as it was', () => {
  const plan = drawnNet('ab', 'cd')
  const next = moveStation(plan, s('a'), [11, 51])
  expect(next.stations.get(s('a'))?.position).toEqual([11, 51])
  expect(next.stations.get(s('b'))).toBe(plan.stations.get(s('b')))
  expect(next.lines).toBe(plan.lines)
  expect(next.circuits).toBe(plan.circuits)
})

test('a move to where the station stands, or the name that it has, changes nothing', () => {
  const plan = drawnNet('ab')
  expect(moveStation(plan, s('a'), plan.stations.get(s('a'))!.position)).toBe(plan)
  expect(renameStation(plan, s('a'), 'A')).toBe(plan)
  expect(noteStation(plan, s('a'), '')).toBe(plan)
  expect(moveStation(plan, s('z'), [0, 0])).toBe(plan)
  expect(removeStation(plan, s('z'))).toBe(plan)
})

test('a station dragged round the world lands on its longitude, and none passes a pole', () => {
  const at = (lonDeg: number, latDeg: number) =>
    moveStation(drawnNet(), s('a'), [lonDeg, latDeg]).stations.get(s('a'))?.position
  expect(at(190, 10)).toEqual([-170, 10])
  expect(at(-541, 10)).toEqual([179, 10])
  expect(at(180, 95)).toEqual([180, 90])
  expect(at(-180, -95)).toEqual([-180, -90])
})

test('a circuit called after its first line follows a new name; one with a name of its own keeps it', () => {
  const plan = drawnNet('ab')
  expect(renameStation(plan, s('a'), 'Ford').circuits.get(c('c-ab'))?.name).toBe('Ford – B')
  const named = renameCircuit(plan, c('c-ab'), 'Camp net')
  expect(renameStation(named, s('a'), 'Ford').circuits.get(c('c-ab'))?.name).toBe('Camp net')
})

//  a ── b ── c ── d     b goes, with its lines
test('a removed station takes its lines, its sets and the supply that stands there along', () => {
  const net = setSet(drawnNet('ab', 'bc', 'cd'), c('c-ab'), s('b'), 'crank-1600')
  const fed = setSupply(setSet(net, c('c-ab'), s('d'), 'crank-1600'), c('c-ab'), {
    type: 'feed-48',
    at: s('b'),
  })
  const next = removeStation(fed, s('b'))
  expect([...next.lines.keys()]).toEqual(['cd'])
  expect(circuitsIn(next)).toEqual(['c-ab: cd'])
  expect(next.circuits.get(c('c-ab'))).toMatchObject({ sets: new Map([['d', 'crank-1600']]), supply: null })
  expect(next.lines.get(l('cd'))).toBe(fed.lines.get(l('cd')))
})

test('an id that is taken, or a position that is none, is the fault of a program', () => {
  const plan = drawnNet('ab')
  expect(() => addStation(plan, { id: s('ab'), name: '', position: [0, 0] })).toThrow('ab')
  expect(() => moveStation(plan, s('a'), [Number.NaN, 0])).toThrow('position')
})
