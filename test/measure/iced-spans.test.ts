import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { LOADINGS } from '../../src/catalog/overhead-loading'
import { WIRES } from '../../src/catalog/wires'
import { loadedWeight, weightNPerM } from '../../src/measure/ice-and-wind'
import { legUnder, spanUnder } from '../../src/measure/iced-spans'
import { overheadSpans } from '../../src/measure/overhead-spans'

const field = WIRES.find(({ id }) => id === 'wd-1a')!
const hung = (spanM: number, sagPct: number) => {
  const result = overheadSpans({ lengthM: spanM, wire: field, tempC: 20, sagPct, spanM }, () => undefined)
  if (!result.ok) throw new Error(result.problems[0]!.message)
  return result.value
}
const under = { wire: field, tempC: 20 }

describe('a wire under ice and wind', () => {
  test('weighs what a ring of ice and the wind on it weigh, by hand', () => {
    // 12.7 mm of ice at 913 kg/m³ on 4 mm: π · 12.7 · 16.7 mm² = 666.3 mm², 0.6083 kg/m; the wire has 0.0135. Wind of 191.5 Pa on 29.4 mm.
    const { plumbNPerM, acrossNPerM, resultantNPerM } = loadedWeight(field, LOADINGS.heavy)
    expect(plumbNPerM).toBeCloseTo((0.6083 + 0.01353) * 9.80665, 2)
    expect(acrossNPerM).toBeCloseTo(191.5 * 0.0294, 2)
    expect(resultantNPerM).toBeCloseTo(Math.hypot(plumbNPerM, acrossNPerM), 12)
  })

  test('is as heavy as it is where nothing lies on it', () => {
    expect(loadedWeight(field, { iceMm: 0, windPa: 0 }).resultantNPerM).toBeCloseTo(weightNPerM(field), 12)
  })

  test('of two bare wires apart bears ice twice', () => {
    const one = { kgPerKm: 40, outsideMm: 2.6 }
    const ice = (apart: number) =>
      loadedWeight({ ...one, hangsApart: apart }, { iceMm: 10, windPa: 0 }).plumbNPerM - weightNPerM(one)
    expect(ice(2)).toBeCloseTo(2 * ice(1), 9)
  })

  test('sags and pulls more the more lies on it, whatever the span', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 8, max: 80, noNaN: true }),
        fc.double({ min: 1, max: 6, noNaN: true }),
        (spanM, sagPct) => {
          const leg = hung(spanM, sagPct)
          const [medium, heavy] = [LOADINGS.medium, LOADINGS.heavy].map((loading) =>
            spanUnder(leg.spans[0]!, { wire: field, tempC: 0, loading }),
          )
          expect(heavy!.icedSagM).toBeGreaterThan(medium!.icedSagM)
          expect(heavy!.tensionN).toBeGreaterThan(medium!.tensionN)
          expect(medium!.icedSagM).toBeGreaterThan(leg.spans[0]!.hanging.sagM)
        },
      ),
    )
  })

  test('keeps the sum of weight and pull: tension, sag and weight of a loaded span agree with the parabola', () => {
    const leg = hung(30.48, 2)
    const loaded = spanUnder(leg.spans[0]!, { ...under, loading: { ...LOADINGS.heavy, windPa: 0, tempC: 0 } })
    const { plumbNPerM } = loadedWeight(field, { iceMm: LOADINGS.heavy.iceMm, windPa: 0 })
    // H = w L² / 8 s; the greatest tension is H + w s.
    const pullN = (plumbNPerM * 30.48 ** 2) / (8 * loaded.icedSagM) + plumbNPerM * loaded.icedSagM
    expect(loaded.tensionN / pullN).toBeCloseTo(1, 2)
  })

  test('is told for a leg by its lowest place and its hardest pull', () => {
    const leg = hung(30, 2)
    const { lowest, pulledShare } = legUnder(leg, { ...under, loading: LOADINGS.heavy })
    const one = spanUnder(leg.spans[0]!, { ...under, loading: LOADINGS.heavy })
    expect(lowest.atM).toBeCloseTo(15, 9)
    expect(lowest.clearanceM).toBeCloseTo(18 * 0.3048 - one.icedSagM, 6)
    expect(pulledShare).toBeCloseTo(one.tensionN / field.breakN!, 9)
  })
})
