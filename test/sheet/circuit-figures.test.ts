import { expect, test } from 'vitest'
import { circuitFigures } from '../../src/sheet/kinds/circuit-figures'
import { demoPlan, sourceOf } from './demo-source'

const plan = demoPlan()
const blocks = circuitFigures(sourceOf(plan))

test('every circuit has its plots under its name, two side by side', () => {
  const headings = blocks
    .filter(({ kind }) => kind === 'heading')
    .map((block) => 'text' in block && block.text)
  expect(headings).toEqual([...plan.circuits.values()].map(({ name }) => name))
  // Crank sets have loss and ring volts: one row. A feed that rings has battery volts besides: two.
  const rowsOf = (name: string) => {
    const from = headings.indexOf(name)
    const starts = blocks.flatMap(({ kind }, k) => (kind === 'heading' ? [k] : []))
    const own = blocks.slice(starts[from]! + 1, starts[from + 1])
    return own.filter(({ kind }) => kind === 'drawing').length
  }
  expect(rowsOf('Camp net')).toBe(1)
  expect(rowsOf('River net')).toBe(2)
})

test('every circuit is told how far each wire would take it, and each supply where it has one', () => {
  const tables = blocks.flatMap((block) => (block.kind === 'table' ? [block.table] : []))
  const ofWire = tables.filter(({ title }) => title.includes('one wire on'))
  expect(ofWire).toHaveLength(plan.circuits.size)
  expect(tables.length - ofWire.length).toBe(
    [...plan.circuits.values()].filter(({ supply }) => supply).length,
  )
  // The wire of the camp net is one and the same on all its lines.
  expect(ofWire[0]!.rows.filter(([name]) => String(name).endsWith('(yours now)'))).toHaveLength(1)
})
