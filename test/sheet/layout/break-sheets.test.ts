import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Block, blockHeights } from '../../../src/sheet/layout/block'
import { breakIntoSheets } from '../../../src/sheet/layout/break-sheets'
import { bodyOf, PAPER_SIZES } from '../../../src/sheet/layout/paper-size'
import type { Table } from '../../../src/sheet/layout/table'

const room = bodyOf(PAPER_SIZES[0]!)

const tableOf = (texts: readonly string[]): Table => ({
  title: 'Legs',
  columns: [
    { head: 'Leg', share: 1 },
    { head: 'Note', share: 4 },
  ],
  rows: texts.map((text, i) => [i + 1, text]),
})

const block = (): fc.Arbitrary<Block> =>
  fc.oneof(
    fc
      .array(fc.lorem({ maxCount: 40 }), { minLength: 1, maxLength: 60 })
      .map((texts) => ({ kind: 'table', table: tableOf(texts) }) as const),
    fc.lorem({ maxCount: 60 }).map((text) => ({ kind: 'text', text }) as const),
    fc
      .array(fc.lorem({ maxCount: 30 }), { minLength: 1, maxLength: 20 })
      .map((sentences) => ({ kind: 'box', title: 'Cautions', sentences }) as const),
    fc
      .integer({ min: 20, max: 130 })
      .map((heightMm) => ({ kind: 'drawing', heightMm, drawing: null }) as const),
    fc.constant({ kind: 'heading', text: 'Line 1' } as const),
  )

const heightMm = (blocks: readonly Block[]) =>
  blocks.reduce((sum, one) => {
    const { headMm, itemsMm } = blockHeights(one, room.widthMm)
    return sum + headMm + itemsMm.reduce((a, b) => a + b, 0)
  }, 0)

describe('breaking a paper into sheets', () => {
  test('loses no row and no sentence, keeps their order, and fills no sheet beyond its room', () => {
    fc.assert(
      fc.property(fc.array(block(), { maxLength: 12 }), (blocks) => {
        const sheets = breakIntoSheets(blocks, room)
        for (const sheet of sheets) expect(heightMm(sheet)).toBeLessThanOrEqual(room.heightMm + 1e-6)
        const rows = (all: readonly Block[]): readonly unknown[] =>
          all.flatMap((one): readonly unknown[] =>
            one.kind === 'table' ? one.table.rows : one.kind === 'box' ? one.sentences : [],
          )
        expect(rows(sheets.flat())).toEqual(rows(blocks))
        expect(sheets.every((sheet) => sheet.length > 0)).toBe(true)
      }),
    )
  })

  test('leaves no heading alone at the foot of a sheet', () => {
    fc.assert(
      fc.property(fc.array(block(), { maxLength: 12 }), (blocks) => {
        const sheets = breakIntoSheets([...blocks, { kind: 'text', text: 'End.' }], room)
        return sheets.every((sheet) => sheet.at(-1)!.kind !== 'heading')
      }),
    )
  })

  test('marks a table that goes on from another sheet, and gives it its columns again', () => {
    const table = tableOf(Array.from({ length: 90 }, () => 'row'))
    const sheets = breakIntoSheets([{ kind: 'table', table }], room)
    expect(sheets.length).toBeGreaterThan(1)
    for (const [i, sheet] of sheets.entries()) {
      const part = sheet[0]!
      if (part.kind !== 'table') throw new Error('not a table')
      expect(part.continued ?? false).toBe(i > 0)
      expect(part.table.columns).toEqual(table.columns)
    }
  })

  test('gives a row that is taller than any sheet a sheet of its own, uncut', () => {
    const endless = 'word '.repeat(5000)
    const sheets = breakIntoSheets([{ kind: 'table', table: tableOf(['a', endless, 'b']) }], room)
    const rows = sheets.map((sheet) => (sheet[0]!.kind === 'table' ? sheet[0]!.table.rows.length : 0))
    expect(rows).toEqual([1, 1, 1])
  })
})
