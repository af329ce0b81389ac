import { expect, test } from 'vitest'
import {
  circuitsAtStation,
  circuitsOfLine,
  connectedPieces,
  stationsOfCircuit,
} from '../../src/plan/circuit-topology'
import type { LineId, StationId } from '../../src/plan/id'
import { c, drawnNet, l, s } from './drawn-net'

//  a ── b ── c ── d
//       └─── e
test('the stations of a circuit come in the order in which its lines reach them', () => {
  const plan = drawnNet('bc', 'ab', 'cd', 'be')
  expect(stationsOfCircuit(plan, plan.circuits.get(c('c-bc'))!)).toEqual(['b', 'c', 'a', 'd', 'e'])
})

//  a ── b     c ── d
test('a station is on the circuits whose lines touch it, and on no other', () => {
  const plan = drawnNet('ab', 'cd')
  expect(circuitsAtStation(plan, s('a')).map((each) => each.id)).toEqual(['c-ab'])
  expect(circuitsAtStation(plan, s('d')).map((each) => each.id)).toEqual(['c-cd'])
  expect(circuitsAtStation(plan, s('e'))).toEqual([])
  expect(circuitsOfLine(plan, l('cd')).map((each) => each.id)).toEqual(['c-cd'])
})

test('lines that meet over stations are one piece, whatever their order', () => {
  const ends = (id: LineId) => ({ from: id[0] as StationId, to: id[1] as StationId })
  const piecesOf = (...lines: string[]) => connectedPieces(lines as LineId[], ends)
  expect(piecesOf('ab', 'cd', 'bc')).toEqual([['ab', 'cd', 'bc']])
  expect(piecesOf('ab', 'cd', 'be', 'df')).toEqual([
    ['ab', 'be'],
    ['cd', 'df'],
  ])
  expect(piecesOf('ab', 'bc', 'ca')).toEqual([['ab', 'bc', 'ca']])
  expect(piecesOf()).toEqual([])
})
