import { describe, expect, test } from 'vitest'
import { BUILT_IN } from '../../../src/catalog/built-in'
import { valueAt, withValueAt } from '../../../src/catalog/entry-value'
import { type EntryFigure, type EntryPart, FIGURES, FORMS } from '../../../src/panel/catalog/entry-figures'

/** The places of all numbers in an entry. */
const numbersIn = (value: unknown, at = ''): string[] =>
  typeof value === 'number'
    ? [at]
    : typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.entries(value).flatMap(([name, inner]) =>
          name === 'spread' ? [] : numbersIn(inner, at ? `${at}.${name}` : name),
        )
      : []

describe('the forms of the catalog', () => {
  const forms: readonly (readonly [
    string,
    readonly object[],
    readonly EntryFigure[],
    readonly EntryPart[],
  ])[] = [
    ['wires', BUILT_IN.wires, FORMS.wire.figures, FORMS.wire.parts],
    ['sets', BUILT_IN.sets, FORMS.set.figures, FORMS.set.parts],
    ['supplies', BUILT_IN.supplies, FORMS.supply.figures, FORMS.supply.parts],
  ]
  test.each(forms)('ask for every number that the built-in %s have', (_, entries, figures, parts) => {
    const asked = new Set([...figures, ...parts.flatMap((part) => part.figures)].map((figure) => figure.at))
    const missing = new Set(entries.flatMap((entry) => numbersIn(entry)).filter((at) => !asked.has(at)))
    expect([...missing]).toEqual([])
  })

  test('name each place once', () => {
    const places = FIGURES.map((figure) => figure.at)
    expect(new Set(places).size).toBe(places.length)
  })
})

test('a value is read and changed where it lies, and the rest of the entry stays', () => {
  const set = { id: 'a', ringer: { ohms: 1000, minVolts: 12 } }
  expect(valueAt(set, 'ringer.ohms')).toBe(1000)
  expect(valueAt(set, 'generator.volts')).toBeUndefined()
  expect(withValueAt(set, 'ringer.ohms', 1600)).toEqual({ id: 'a', ringer: { ohms: 1600, minVolts: 12 } })
  expect(withValueAt(set, 'ringer', undefined)).toEqual({ id: 'a' })
  expect(set.ringer.ohms).toBe(1000)
})
