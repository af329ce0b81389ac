import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { formatTableCsv } from '../../src/files/table-csv'

/** A reader written from the grammar of RFC 4180, section 2, apart from the writer. */
function readCsv(text: string): string[][] {
  const records: string[][] = []
  let at = 0
  while (at < text.length) {
    const record: string[] = []
    for (;;) {
      let field = ''
      if (text[at] === '"') {
        for (at += 1; !(text[at] === '"' && text[at + 1] !== '"'); at++) {
          if (text[at] === '"') at += 1
          field += text[at]
        }
        at += 1
      } else {
        for (; text[at] !== ',' && !text.startsWith('\r\n', at); at++) field += text[at]
      }
      record.push(field)
      if (text[at] !== ',') break
      at += 1
    }
    at += 2
    records.push(record)
  }
  return records
}

const table = (rows: readonly (readonly (string | number | null)[])[]) => ({
  columns: [{ head: 'Leg' }, { head: 'Ground m' }, { head: 'Landmark' }],
  rows,
})

describe('a table as a file', () => {
  test('has a head, a record a row, and ends each with CR LF', () => {
    expect(
      formatTableCsv(
        table([
          [1, 316.25, 'gate'],
          [2, null, ''],
        ]),
      ),
    ).toBe('Leg,Ground m,Landmark\r\n1,316.25,gate\r\n2,,\r\n')
  })

  test('quotes commas, quotes and line ends', () => {
    expect(formatTableCsv(table([[1, 2, 'the "old" wall, east\nside']]))).toContain(
      '1,2,"the ""old"" wall, east\nside"\r\n',
    )
  })

  test.each(['=1+1', '+cmd', '-cmd', '@SUM(A1)', '\tx', '\rx'])('disarms %j', (text) => {
    const field = readCsv(formatTableCsv(table([[1, 2, text]])))[1]![2]
    expect(field).toBe(`'${text}`)
  })

  test('leaves numbers below nought alone, also those that stand as words', () => {
    expect(formatTableCsv(table([[-1, -2.5, '-3.5']]))).toContain('\r\n-1,-2.5,-3.5\r\n')
  })

  test('reads back as it was written, whatever the words', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.string(), fc.string({ unit: 'binary' }), fc.string())), (rows) => {
        const back = readCsv(formatTableCsv(table(rows))).slice(1)
        expect(back.map((row) => row.map((field) => field.replace(/^'(?=[=+\-@\t\r])/, '')))).toEqual(
          rows.map((row) => row.map((field) => field.replace(/^'(?=[=+\-@\t\r])/, ''))),
        )
      }),
    )
  })
})
