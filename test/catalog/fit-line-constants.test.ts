import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type LineConstants, propagation } from '../../src/budget/line-constants'
import { fitNanoFPerKm } from '../../src/catalog/fit-line-constants'
import { WIRES } from '../../src/catalog/wires'
import { DB_PER_NEPER } from '../../src/units'

const line = (ohm: number, milliH: number, nanoF: number, microS: number): LineConstants => ({
  ohmPerKm: ohm,
  henryPerKm: milliH / 1000,
  faradPerKm: nanoF * 1e-9,
  siemensPerKm: microS * 1e-6,
})

/** The loss of a line by the engine's complex arithmetic, which the fit does not share. */
const lossOf = (constants: LineConstants, hz: number) => ({
  dbPerKm: DB_PER_NEPER * propagation(constants, hz).gammaPerKm.re,
  hz,
})

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const anyLine = () => fc.tuple(between(5, 500), between(0.1, 5), between(5, 150), between(0.01, 800))

describe('fitted line constants', () => {
  test('are those of the line whose loss they were fitted to', () => {
    fc.assert(
      fc.property(anyLine(), between(300, 3400), ([ohm, milliH, nanoF, microS], hz) => {
        const series = { loopOhmPerKm: ohm, loopMilliHPerKm: milliH }
        const loss = lossOf(line(ohm, milliH, nanoF, microS), hz)
        // Where leakage outweighs the rest, two capacitances give one loss, and the fit takes the larger.
        const fittedNanoF = fitNanoFPerKm(series, { microSPerKm: microS }, loss)
        const again = lossOf(line(ohm, milliH, fittedNanoF, microS), hz)
        expect(again.dbPerKm / loss.dbPerKm).toBeCloseTo(1, 9)
      }),
    )
  })

  test('do not exist where the loss is less than resistance and leakage alone would give', () => {
    const series = { loopOhmPerKm: 130, loopMilliHPerKm: 0.6 }
    const little = { dbPerKm: 0.01, hz: 1000 }
    expect(() => fitNanoFPerKm(series, { microSPerKm: 100 }, little)).toThrow(RangeError)
  })

  test('of the field wire lie where a handbook reader would put them', () => {
    // Derived apart from the program, by the RC rule α = √(πfRC) at 135 Ω/km: 27 to 28 nF/km dry (L left out or not).
    const field = WIRES.find(({ id }) => id === 'wd-1a')!
    expect(field.nanoFPerKm).toBeGreaterThan(25)
    expect(field.nanoFPerKm).toBeLessThan(31)
  })
})
