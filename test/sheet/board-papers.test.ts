import { describe, expect, test } from 'vitest'
import { overlap, within } from '../../src/figure/geometry'
import { measurePlan } from '../../src/measure/measure-line'
import { type Plan, stationName } from '../../src/plan/plan'
import { trunksOfNet } from '../../src/report/trunks-of-net'
import { boardCard, boardsIn } from '../../src/sheet/kinds/board-card'
import { directory } from '../../src/sheet/kinds/directory'
import { testRecord } from '../../src/sheet/kinds/test-record'
import { trafficDiagram } from '../../src/sheet/kinds/traffic-diagram'
import type { Block } from '../../src/sheet/layout/block'
import { breakIntoSheets } from '../../src/sheet/layout/break-sheets'
import { bodyOf, PAPER_SIZES } from '../../src/sheet/layout/paper-size'
import { boxOf } from '../../src/sheet/scene/scene'
import { MOST_BOXES } from '../../src/sheet/scene/traffic-drawing'
import { boardsInARow, starPlan } from '../plan/star-plan'
import { demoPlan, sourceOf } from './demo-source'
import { wildNet } from './wild-net'

const ROOM = bodyOf(PAPER_SIZES[0]!)
const tablesOf = (blocks: readonly Block[]) =>
  blocks.flatMap((block) => (block.kind === 'table' ? [block.table] : []))
const cards = (plan: Plan) => boardsIn(sourceOf(plan)).map((board) => boardCard(sourceOf(plan), board))

describe('the card of a board', () => {
  const plan = starPlan({ km: [1, 2, 3, 4, 14, 13], operator: true })
  const [jacks, calls] = tablesOf(cards(plan)[0]!)

  test('says of each jack the line and its posts, who it is, and what drop and bell should do', () => {
    expect(jacks!.rows.map(([number, on, who]) => [number, on, who])).toEqual(
      [1, 2, 3, 4, 5, 6].map((k) => [k, `line ${k} (posts ${2 * k - 1}, ${2 * k})`, `Post ${k}`]),
    )
    const { ringing } = sourceOf(plan).report.circuits[0]!
    for (const [k, row] of jacks!.rows.entries()) {
      const volts = (from: string, to: string) =>
        ringing.find((each) => each.from === from && each.to === to)!.volts.toFixed(0)
      expect(row[3]).toBe(`falls: ${volts(`t${k + 1}`, 'hub')}\u00a0V`)
      expect(row[4]).toBe(`rings: ${volts('hub', `t${k + 1}`)}\u00a0V`)
    }
  })

  test('has the loss of every call, the faintest marked and in the corner', () => {
    expect(calls!.rows).toHaveLength(7)
    expect(calls!.rows[1]!.slice(0, 3)).toEqual(['6', 'Post 6', expect.stringMatching(/^\d+ ✗$/)])
  })

  test('has room to name what is spare, and stands on one sheet', () => {
    const [spare] = tablesOf(cards(starPlan({ km: [1, 2] }))[0]!)
    expect(spare!.rows.map(([, , who]) => who)).toEqual(['Post 1', 'Post 2', ...Array(4).fill('spare')])
    expect(breakIntoSheets(cards(plan)[0]!, ROOM)).toHaveLength(1)
  })

  test('says which jack of either board a trunk is on', () => {
    const [first, second] = cards(boardsInARow(2)).map((blocks) => tablesOf(blocks)[0]!.rows)
    expect(first!.map(([, on, who]) => [on, who])).toContainEqual(['line 3 (posts 5, 6)', 'trunk to BOARD2'])
    expect(second!.map(([, on, who]) => [on, who])).toContainEqual(['line 3 (posts 1, 2)', 'trunk to BOARD1'])
  })
})

describe('the directory', () => {
  test.each([
    ['the demo', demoPlan()],
    ['twelve on a board', starPlan({ km: Array(12).fill(1), operator: true })],
    ['three boards', boardsInARow(3)],
    ['a random net', wildNet(3, 14)],
  ])('of %s names every telephone by name, on one sheet', (_, plan) => {
    const blocks = directory(sourceOf(plan), ROOM)
    expect(breakIntoSheets(blocks, ROOM)).toHaveLength(1)
    const [list] = tablesOf(blocks)
    const telephones = [...plan.circuits.values()].reduce((sum, { sets }) => sum + sets.size, 0)
    expect(list!.rows).toHaveLength(telephones)
    const names = list!.rows.map(([name]) => String(name))
    expect(names).toEqual(names.toSorted((a, b) => a.localeCompare(b, 'en', { numeric: true })))
  })

  test('gives numbers on a board, rings on a party line, and no ring where two are alone', () => {
    const rows = tablesOf(directory(sourceOf(demoPlan()), ROOM))[0]!.rows
    const of = (name: string, on: string) => rows.find((row) => row[0] === name && row[1] === on)!.slice(2)
    expect(of('South rig', 'Drill board')).toEqual(['2', 'crank; ask Core shed'])
    expect(of('Core shed', 'Drill board')).toEqual(['the operator', 'crank'])
    expect(of('Camp', 'Camp net')).toEqual(['short, short', 'crank'])
    expect(of('Camp', 'Stores line')[0]).toBe('–')
  })
})

describe('the traffic diagram', () => {
  test.each(Array.from({ length: MOST_BOXES - 1 }, (_, i) => i + 2))(
    'of %i boards lays no words on others',
    (count) => {
      const [drawing] = trafficDiagram(sourceOf(boardsInARow(count)), ROOM)
      if (drawing?.kind !== 'drawing' || drawing.drawing?.kind !== 'scene') throw new Error('no drawing')
      const { scene } = drawing.drawing
      const words = scene.shapes.filter(({ kind }) => kind === 'text').map(boxOf)
      const sheet = { left: 0, top: 0, right: scene.widthMm, bottom: scene.heightMm }
      expect(words.every((box) => within(box, sheet))).toBe(true)
      const thin = words.map(({ left, right, top, bottom }) => ({
        ...{ left: left + 0.15, right: right - 0.15, top: top + 0.15, bottom: bottom - 0.15 },
      }))
      for (const [i, box] of thin.entries())
        for (const other of thin.slice(i + 1)) expect(overlap(box, other)).toBe(false)
    },
  )

  test('counts what is usable between two boards, and says who puts calls through', () => {
    const blocks = trafficDiagram(sourceOf(boardsInARow(2)), ROOM)
    expect(JSON.stringify(blocks)).toContain('"1 circuit"')
    expect(tablesOf(blocks)[0]!.rows[0]).toEqual([
      'BOARD1 – BOARD2',
      '3',
      'BOARD1 and BOARD2',
      expect.stringMatching(/^\w+ – \w+, [\d.]+ dB$/),
      'yes',
    ])
    const far = trafficDiagram(sourceOf(boardsInARow(2, 60)), ROOM)
    expect(JSON.stringify(far)).toContain('"0 of 1 circuit"')
  })

  test('is no paper of a net with fewer than two boards', () => {
    expect(trafficDiagram(sourceOf(wildNet(1, 6)), ROOM)).toEqual([])
    expect(trafficDiagram(sourceOf(demoPlan()), ROOM)).toEqual([])
  })
})

describe('the test record of two boards with a trunk between them', () => {
  const record = (km?: number) => {
    const source = sourceOf(boardsInARow(2, km))
    return {
      source,
      table: tablesOf(testRecord(source, ROOM)).find(({ title }) => title.startsWith('Trunks'))!,
    }
  }

  test('has the drop of either board as the other rings it, and the faintest calls with who puts them through', () => {
    const { source, table } = record()
    const [trunk] = trunksOfNet(source.plan, source.catalog, measurePlan(source.plan))
    expect(table.rows.slice(0, 2).map((row) => [...row.slice(1, 5), row[9]])).toEqual(
      trunk!.ringing.map(({ from, to, volts, minVolts }) => [
        ...[
          stationName(source.plan, from),
          `the drop at ${stationName(source.plan, to)}`,
          volts,
          minVolts,
          '',
        ],
      ]),
    )
    expect(table.rows.slice(2).map((row) => row[5])).toEqual(
      trunk!.calls.slice(0, 4).map(({ lossDb }) => lossDb),
    )
    expect(table.rows[2]![7]).toBe('BOARD1, BOARD2')
  })

  test('marks what fails over too long a trunk', () => {
    expect(record(60).table.rows.map((row) => row[9])).toContain('✗ FAILS')
  })

  test('is without it where there is one board', () => {
    expect(JSON.stringify(testRecord(sourceOf(demoPlan()), ROOM))).not.toContain('Trunks')
  })
})
