import { expect, test } from 'vitest'
import { selectionOf } from '../../../src/map/tools/selection-of'
import type { LineId, StationId } from '../../../src/plan/id'

const leg = (line: string, index: number) => ({ kind: 'leg' as const, line: line as LineId, leg: index })
const line = (id: string, ...legs: number[]) => ({ kind: 'line' as const, id: id as LineId, legs })

test('a click on a leg selects it on its line', () => {
  expect(selectionOf(leg('l', 2), null)).toEqual(line('l', 2))
})

test('further legs of the line are taken in, in order, and let go one by one', () => {
  const two = selectionOf(leg('l', 0), line('l', 2))
  expect(two).toEqual(line('l', 0, 2))
  expect(selectionOf(leg('l', 2), two)).toEqual(line('l', 0))
})

const station = (id: string) => ({ kind: 'station' as const, id: id as StationId })

test('a leg of another line, and a station, are selected together with what was; again, and they are let go', () => {
  const lines = selectionOf(leg('m', 1), line('l', 2))
  expect(lines).toEqual({ kind: 'several', id: 'several', stations: [], lines: ['l', 'm'] })
  const all = selectionOf(station('a'), lines)
  expect(all).toMatchObject({ kind: 'several', stations: ['a'], lines: ['l', 'm'] })
  expect(selectionOf(leg('l', 0), selectionOf(leg('m', 0), all))).toEqual(station('a'))
})

test('a click that does not add selects one thing alone', () => {
  expect(selectionOf(leg('m', 1), null)).toEqual(line('m', 1))
})

test('a click beside everything keeps what is being added to, and else selects nothing', () => {
  expect(selectionOf(null, line('l', 2))).toEqual(line('l', 2))
  expect(selectionOf(null, null)).toBeNull()
})
