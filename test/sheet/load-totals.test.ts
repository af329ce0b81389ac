import { expect, test } from 'vitest'
import { loadList } from '../../src/sheet/kinds/load-list'
import { blocksWithin } from '../../src/sheet/layout/block'
import { bodyOf, PAPER_SIZES } from '../../src/sheet/layout/paper-size'
import type { Table } from '../../src/sheet/layout/table'
import { demoPlan, sourceOf } from './demo-source'

/** Figures of a column by a part of its head, with the words of the row's first column of text. */
function column(table: Table, head: string): readonly number[] {
  const at = table.columns.findIndex((one) => one.head.startsWith(head))
  return table.rows.map((row) => row[at] as number)
}
const sum = (figures: readonly number[]) => figures.reduce((all, each) => all + each, 0)

const tablesOf = (plan: ReturnType<typeof demoPlan>) => {
  const source = sourceOf(plan)
  const tables = blocksWithin(loadList(source, bodyOf(PAPER_SIZES[0]!))).flatMap((block) =>
    block.kind === 'table' ? [block.table] : [],
  )
  const called = (title: string) => tables.filter((table) => table.title.startsWith(title))
  return { source, called }
}

test.each(['lanceKg', 'stakeKg', 'tagKg', 'testSetKg'] as const)(
  'a mass that a person changes, %s, stands in the list of what is carried',
  (field) => {
    const before = tablesOf(demoPlan())
    const after = tablesOf({ ...demoPlan(), work: { [field]: 5 } })
    const massOf = ({ called }: typeof before) =>
      called('What is carried').flatMap((table) => column(table, 'Each'))
    expect(massOf(after)).not.toEqual(massOf(before))
    expect(massOf(after)).toContain(5)
  },
)

test.each([{}, { lanceKg: 4.4, guyKg: 0.7, weightKg: 2, crews: 2 }])('printed totals agree: %o', (work) => {
  const { source, called } = tablesOf({ ...demoPlan(), work })
  const { totalKg } = source.report.loads
  const [byKind] = called('Mass by kind')
  const kinds = byKind!.rows[0] as number[]
  expect(kinds.at(-1)).toBeCloseTo(totalKg, 6)
  expect(sum(kinds.slice(0, -1))).toBeCloseTo(totalKg, 6)
  expect(sum(called('What is carried').flatMap((table) => column(table, 'Together')))).toBeCloseTo(totalKg, 6)
  expect(sum(column(called('The crews')[0]!, 'Carries'))).toBeCloseTo(totalKg, 6)
  expect(sum(called('Crew ').flatMap((table) => column(table, 'Together')))).toBeCloseTo(totalKg, 6)
})
