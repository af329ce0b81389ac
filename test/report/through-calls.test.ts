import { expect, test } from 'vitest'
import { reportPlan } from '../../src/report/report-plan'
import type { Switchboard } from '../../src/report/switchboard'
import { telephonesOn, throughCalls } from '../../src/report/through-calls'
import { starPlan } from '../plan/star-plan'

test('the triangle holds every pair of telephones on two jacks once, the faintest in its corner', () => {
  const { switchboard, voice } = reportPlan(starPlan({ km: [1, 9, 3, 12], operator: true })).circuits[0]!
  const { telephones, calls } = throughCalls(switchboard!, voice)
  expect(telephones.map(({ label }) => label)).toEqual(['2', '4', '3', '1', 'op'])
  expect(calls.map((row) => row.length)).toEqual([1, 2, 3, 4])
  const all = calls.flat().map((row) => row!)
  expect(all).toHaveLength(10)
  const losses = all.map(({ lossDb }) => lossDb)
  expect(losses[0]).toBe(Math.max(...losses))
  for (const [i, row] of calls.entries())
    for (const [k, call] of row.entries())
      expect([call!.from, call!.to].sort()).toEqual(
        [telephones[i + 1]!.station, telephones[k]!.station].sort(),
      )
})

test('telephones that share a line are told apart by letters, and no call between them is a through call', () => {
  const jack = { lines: [], trunkTo: null, bell: null, drop: null }
  const board: Switchboard = {
    kind: 'board',
    station: 'hub',
    hasOperator: false,
    jacks: [
      { ...jack, number: 1, stations: ['a', 'b'] },
      { ...jack, number: 2, stations: ['c'] },
    ],
    spare: 0,
    faint: [],
    callsAtOnce: 1,
  }
  expect(telephonesOn(board).map(({ label }) => label)).toEqual(['1a', '1b', '2'])
  const row = (from: string, to: string, lossDb: number) => ({ from, to, lossDb, maxDb: 30 })
  const { calls } = throughCalls(board, [
    row('a', 'b', 9),
    row('a', 'c', 5),
    row('c', 'b', 7),
    row('b', 'c', 8),
  ])
  expect(calls).toEqual([[row('b', 'c', 8)], [null, row('a', 'c', 5)]])
})
