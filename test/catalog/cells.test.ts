import { describe, expect, test } from 'vitest'
import { ampHoursAt, inSeries, partUsedAt, voltsWhenUsed } from '../../src/catalog/cell'
import { CELLS } from '../../src/catalog/cells'
import { ALKALINE_9_VOLT, ALKALINE_D } from '../../src/catalog/cells-alkaline'

describe('cells', () => {
  test('in series add volts and resistance, not capacity', () => {
    const two = inSeries(ALKALINE_9_VOLT, 2)
    expect(two.volts).toBe(18)
    expect(two.ohms).toBeCloseTo(3.4, 12)
    expect(two.ampHours).toBe(ALKALINE_9_VOLT.ampHours)
  })

  test('give what their table says at its drains, and its end values beyond them', () => {
    for (const { drainMA, ampHours } of ALKALINE_D.capacity) {
      expect(ampHoursAt(ALKALINE_D, drainMA, 20)).toBeCloseTo(ampHours, 9)
    }
    expect(ampHoursAt(ALKALINE_D, 1, 20)).toBe(18)
    expect(ampHoursAt(ALKALINE_D, 5000, 20)).toBe(6)
  })

  test('never give more at a heavier drain, nor in the cold', () => {
    for (const cell of CELLS) {
      let before = Number.POSITIVE_INFINITY
      for (let drainMA = 1; drainMA < 6000; drainMA *= 1.1) {
        const warm = ampHoursAt(cell, drainMA, 20)
        expect(warm, cell.id).toBeLessThanOrEqual(before)
        expect(ampHoursAt(cell, drainMA, -10), cell.id).toBeLessThan(warm)
        before = warm
      }
    }
  })

  test('are spent before they are empty, and say where their figures come from', () => {
    for (const cell of CELLS) {
      expect(cell.endVolts, cell.id).toBeLessThan(cell.volts)
      for (const { says } of Object.values(cell.sources)) expect(says).toMatch(/\.$/)
    }
  })

  test('fall from fresh to used up, and tell how much is used by their volts', () => {
    for (const cell of CELLS) {
      expect([cell.curve[0]!.part, cell.curve.at(-1)!.part], cell.id).toEqual([0, 1])
      let before = Number.POSITIVE_INFINITY
      for (let part = 0; part <= 1; part += 0.05) {
        const volts = voltsWhenUsed(cell, part)
        expect(volts, cell.id).toBeLessThan(before)
        expect(partUsedAt(cell, volts), cell.id).toBeCloseTo(part, 9)
        before = volts
      }
      expect(partUsedAt(cell, 100)).toBe(0)
      expect(partUsedAt(cell, 0)).toBe(1)
      expect(voltsWhenUsed(cell, 2)).toBe(cell.curve.at(-1)!.volts)
      const spent = partUsedAt(cell, cell.endVolts)
      expect(spent, cell.id).toBeGreaterThan(0.7)
    }
  })
})
