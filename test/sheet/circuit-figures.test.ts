import { expect, test } from 'vitest'
import { circuitFigures } from '../../src/sheet/kinds/circuit-figures'
import { demoPlan, sourceOf } from './demo-source'

test('every circuit has its plots under its name, two side by side', () => {
  const plan = demoPlan()
  const blocks = circuitFigures(sourceOf(plan))
  const headings = blocks
    .filter(({ kind }) => kind === 'heading')
    .map((block) => 'text' in block && block.text)
  expect(headings).toEqual([...plan.circuits.values()].map(({ name }) => name))
  // Crank sets have loss and ring volts: one row. A feed that rings has battery volts besides: two.
  const rowsOf = (name: string) => {
    const from = headings.indexOf(name)
    const starts = blocks.flatMap(({ kind }, k) => (kind === 'heading' ? [k] : []))
    return (starts[from + 1] ?? blocks.length) - starts[from]! - 1
  }
  expect(rowsOf('Camp net')).toBe(1)
  expect(rowsOf('River net')).toBe(2)
})
