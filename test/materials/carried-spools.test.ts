import { describe, expect, test } from 'vitest'
import { WIRES } from '../../src/catalog/wires'
import { carriedLengthsM, fullSpoolKg } from '../../src/materials/carried-spools'

const wire = (id: string) => WIRES.find((each) => each.id === id)!
const usual = { perPersonKg: 22, crew: 4, reelPct: 10 }

describe('what a crew on foot can carry of a wire', () => {
  test('is no reel of two and a half miles, which has 74 kg', () => {
    const field = wire('wd-1a')
    expect(fullSpoolKg(field.id, field.spoolsM[3]!, field.kgPerKm, 10)).toBeCloseTo(74.4, 1)
    expect(carriedLengthsM(field, usual)).toEqual(field.spoolsM.slice(0, 3))
  })

  test('is less for one person alone, who has nobody at the other end of the axle', () => {
    const field = wire('wd-1a')
    expect(carriedLengthsM(field, { ...usual, crew: 1 })).toEqual(field.spoolsM.slice(0, 2))
    expect(carriedLengthsM(field, { ...usual, perPersonKg: 10 })).toEqual(field.spoolsM.slice(0, 2))
  })

  test('is the lightest spool where all are too heavy, and nothing where there is none', () => {
    expect(carriedLengthsM(wire('w-110-b'), usual)).toEqual([wire('w-110-b').spoolsM[0]])
    expect(carriedLengthsM({ ...wire('wd-1a'), spoolsM: [] }, usual)).toEqual([])
  })

  test('is whatever its owner says of a wire of the plan’s own', () => {
    expect(carriedLengthsM({ ...wire('wd-1a'), id: 'own', spoolsM: [8000] }, usual)).toEqual([8000])
  })

  test('is every length of every wire but the heaviest', () => {
    const left = WIRES.flatMap((each) => {
      const carried = carriedLengthsM(each, usual)
      return each.spoolsM
        .filter((lengthM) => !carried.includes(lengthM))
        .map((lengthM) => `${each.id} ${Math.round(lengthM)}`)
    })
    expect(left).toEqual(['wd-1a 4023', 'w-110-b 4023'])
  })
})
