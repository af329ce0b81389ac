import { describe, expect, test } from 'vitest'
import { parsePlan } from '../../src/files/parse-plan'
import { EMPTY_PLAN, type Plan } from '../../src/plan/plan'
import { stationCards } from '../../src/sheet/kinds/station-cards'
import { testRecord } from '../../src/sheet/kinds/test-record'
import { blocksWithin } from '../../src/sheet/layout/block'
import { breakIntoSheets } from '../../src/sheet/layout/break-sheets'
import { bodyOf, PAPER_SIZES } from '../../src/sheet/layout/paper-size'
import type { Table } from '../../src/sheet/layout/table'
import { PAPER_KINDS } from '../../src/sheet/paper-kinds'
import { PAPER_NAMES } from '../../src/sheet/paper-names'
import { halvingCuts } from '../../src/sheet/tables/fault-tables'
import { formatOhms } from '../../src/words/units'
import { demoPlan, sourceOf } from './demo-source'
import { wildNet } from './wild-net'

const room = bodyOf(PAPER_SIZES[0]!)

/** Two stations and a line between them, with one circuit of crank sets. */
function planBetween(
  from: readonly [number, number],
  to: readonly [number, number],
  line: object = {},
): Plan {
  const station = (id: string, coordinates: readonly [number, number]) => ({
    type: 'Feature',
    id,
    properties: { kind: 'station', name: id },
    geometry: { type: 'Point', coordinates },
  })
  const result = parsePlan(
    JSON.stringify({
      type: 'FeatureCollection',
      plan: {
        format: 'fieldpair-plan',
        version: 1,
        title: 'Two',
        circuits: [
          {
            id: 'c',
            name: 'Net',
            lines: ['l'],
            sets: { Alder: 'crank-1600', Birch: 'crank-1600' },
            supply: null,
          },
        ],
      },
      features: [
        station('Alder', from),
        station('Birch', to),
        {
          type: 'Feature',
          id: 'l',
          properties: {
            kind: 'line',
            from: 'Alder',
            to: 'Birch',
            wire: 'wd-1a',
            legs: [{ lay: 'surface' }],
            ...line,
          },
          geometry: { type: 'LineString', coordinates: [from, to] },
        },
      ],
    }),
  )
  if (!result.ok) throw new Error(result.problems.map(({ message }) => message).join('\n'))
  return result.value
}

const sheetsOf = (plan: Plan) =>
  PAPER_NAMES.flatMap((name) => PAPER_KINDS[name](sourceOf(plan), room)).flatMap(({ blocks }) =>
    breakIntoSheets(blocks, room),
  )
const wordsOf = (plan: Plan) => JSON.stringify(sheetsOf(plan))

describe('papers are made', () => {
  test('of an empty plan', () => {
    expect(sheetsOf(EMPTY_PLAN).length).toBeGreaterThan(0)
  })

  test('of a line across the antimeridian, at one scale with any other of its length', () => {
    expect(wordsOf(planBetween([179.99, -17], [-179.99, -17.001]))).toContain('zone')
  })

  test('of a line near the pole, where there is no grid, in degrees', () => {
    const words = wordsOf(planBetween([10, 85], [10.2, 85.01]))
    expect(words).toContain('there is no UTM grid')
    expect(words).toContain('grid in degrees')
  })

  test('of a line of 60 km, on more strips than one', () => {
    expect(wordsOf(planBetween([20, 50], [20.1, 50.5]))).toMatch(/Strip 1 of \d/)
  })

  test('of an earth return, without the figures that only a pair has', () => {
    const words = wordsOf(planBetween([20, 50], [20.02, 50], { return: 'earth', electrodeOhms: [40, 60] }))
    expect(words).toContain('one wire and the earth')
    expect(words).not.toContain('short the pair')
    expect(words).toContain('at Alder 40.0 Ω, at Birch 60.0 Ω')
  })
})

/** Number of the line that a walk is of, by its first tag. */
const firstTag = ({ columns, rows }: Pick<Table, 'columns' | 'rows'>): number =>
  Number.parseInt(String(rows[0]![columns.findIndex(({ head }) => head === 'Tag')]), 10)

describe('the figures on the papers', () => {
  const source = sourceOf(demoPlan())
  const tables = PAPER_NAMES.flatMap((name) => PAPER_KINDS[name](source, room)).flatMap(({ blocks }) =>
    blocksWithin(blocks).flatMap((block) => (block.kind === 'table' ? [block.table] : [])),
  )

  test('run along each line to its whole ground, by every tag, splice and crossing of the report', () => {
    // Two short lines share a table, whose first column says which a row is of.
    const walks = tables
      .filter(({ title }) => title === 'On the way')
      .flatMap(({ columns, rows }) =>
        columns[0]!.head === 'Line'
          ? [...new Set(rows.map(([line]) => line))].map((own) => ({
              columns,
              rows: rows.filter(([line]) => line === own),
            }))
          : [{ columns, rows }],
      )
    expect(walks).toHaveLength(source.report.lines.length)
    const inOrder = walks.toSorted((a, b) => firstTag(a) - firstTag(b))
    for (const [i, { columns, rows }] of inOrder.entries()) {
      const line = source.report.lines[i]!
      const column = (head: string) => columns.findIndex((one) => one.head === head)
      const runs = rows.map((row) => row[column('Run m')] as number)
      expect(runs.at(-1)).toBeCloseTo(line.groundM, 6)
      expect(runs).toEqual(runs.toSorted((a, b) => a - b))
      const tags = rows.map((row) => row[column('Tag')]).filter(Boolean)
      expect(tags.join()).toBe(line.tags.map(({ number }) => `${i + 1}/${number}`).join())
      const words = rows.map((row) => row.join(' ')).join('\n')
      for (let k = 1; k <= line.splices.length; k++) expect(words).toContain(`splice S${k}`)
      for (const { name } of line.crossings) if (name) expect(words).toContain(name)
      // The end is read last: half of its range lies on either side of the report's loop, by the wire's spread.
      const [low, high] = String(rows.at(-1)![column('Loop Ω')]).split('–').map(Number)
      expect(low).toBeLessThanOrEqual(line.loopOhms)
      expect(high).toBeGreaterThanOrEqual(line.loopOhms)
    }
  })

  // Half of the loop is half of a uniform wire; Hawkins Electrical Guide, vol. 3 (1914): on a bridge wire the reading is in proportion.
  test('lead from a reading to its place: half the loop, half the bridge, half the rheostat are half the wire', () => {
    const each = tables.find(({ title }) => title.startsWith('Each line'))!
    for (const row of each.rows) {
      const [, , wireM, loopOhm, shortM, murrayM, varleyM, dryNanoF, dryM, wetNanoF, wetM] = row as number[]
      expect((shortM! * loopOhm!) / 2).toBeCloseTo(wireM! / 2, 3)
      expect(murrayM! * 25).toBeCloseTo(wireM! / 2, 3)
      expect((varleyM! * loopOhm!) / 2).toBeCloseTo(wireM! / 2, 3)
      // A uniform wire: its capacitance is in proportion to its length, dry and wet alike.
      expect((dryM! * dryNanoF!) / 2).toBeCloseTo(wireM! / 2, 3)
      expect((wetM! * wetNanoF!) / 2).toBeCloseTo(wireM! / 2, 3)
      expect(wetNanoF!).toBeGreaterThanOrEqual(dryNanoF!)
    }
  })

  test('give each row as many cells as its table has columns', () => {
    for (const { title, columns, rows } of tables) {
      for (const row of rows) expect(row.length, title).toBe(columns.length)
    }
  })
})

describe('halving', () => {
  test('cuts every stretch in two, and after four cuts of sixteen stretches leaves one', () => {
    expect(halvingCuts(2)).toEqual([])
    expect(halvingCuts(5)).toEqual([[2], [1, 3]])
    expect(halvingCuts(17)).toEqual([[8], [4, 12], [2, 6, 10, 14], [1, 3, 5, 7, 9, 11, 13, 15]])
  })
})

describe('a phantom over two pairs', () => {
  const pairs = planBetween([20, 50], [20.02, 50], { pairs: 2 })
  const [own] = [...pairs.circuits.values()]
  const on = (id: string, more: object) =>
    [id as never, { ...own!, id: id as never, name: id, ...more }] as const
  const plan: Plan = {
    ...pairs,
    circuits: new Map([on('North', {}), on('South', {}), on('Over', { over: 'phantom' })]),
  }
  const source = sourceOf(plan)
  const [line] = source.report.lines

  test('has half of a pair’s loop on the diagram, and no loss that is a pair’s', () => {
    const words = JSON.stringify(PAPER_KINDS['Circuit diagram'](source, room))
    expect(words).toContain('"pairs 1+2"')
    expect(words).toContain(formatOhms(line!.loopOhms / 2))
  })

  test('is tested by its pairs: no line of its own is read', () => {
    const tables = blocksWithin(testRecord(source, room)).flatMap((block) =>
      block.kind === 'table' ? [block.table.title] : [],
    )
    expect(tables.filter((title) => title.includes('its lines'))).toHaveLength(2)
    expect(tables.filter((title) => title.includes('every call'))).toHaveLength(3)
  })

  test('is hooked up at the middles of both coils', () => {
    const words = JSON.stringify(stationCards(source, PAPER_SIZES[0]!)).replace(/[\s\u00a0]+/g, ' ')
    expect(words).toContain('phantom')
    expect(words).toContain('middle of')
  })
})

test('a crew reads off the line’s card on which posts its pairs are tied', () => {
  const words = wordsOf(planBetween([20, 50], [20.02, 50], { pairs: 2 }))
  expect(words).toContain('Pair 1 on posts 1, 2. Pair 2 on posts 3, 4.')
  const earth = wordsOf(planBetween([20, 50], [20.02, 50], { return: 'earth', electrodeOhms: [40, 60] }))
  expect(earth).toContain('Wire on post 1, rod on post 2.')
})

test.each([
  [3, 14],
  [4, 24],
])('no circuit of the wild net %i is drawn higher than a sheet, however long its names', (seed, count) => {
  const [diagram] = PAPER_KINDS['Circuit diagram'](sourceOf(wildNet(seed, count)), room)
  for (const block of blocksWithin(diagram!.blocks))
    if (block.kind === 'drawing') expect(block.heightMm).toBeLessThanOrEqual(room.heightMm)
})
