import { describe, expect, test } from 'vitest'
import { BUILDS, type MakeUp, METALS, wireFromMakeUp } from '../../src/catalog/own-wire'
import { figuresOf } from '../../src/catalog/source-tally'
import { sourceAt } from '../../src/catalog/sources'
import type { Wire } from '../../src/catalog/wire'
import { wireFromReading } from '../../src/catalog/wire-reading'
import { WIRES } from '../../src/catalog/wires'
import { putWire } from '../../src/plan/catalog-edits'
import type { Result } from '../../src/problem'
import { drawnNet, mended } from '../plan/drawn-net'

const made = (result: Result<Wire>): Wire => {
  if (!result.ok) throw new Error(result.problems[0]!.message)
  return result.value
}
const refusals = (result: Result<Wire>) => (result.ok ? [] : result.problems.map(({ message }) => message))
const END: MakeUp = {
  id: 'own',
  name: 'Own',
  metal: 'copper',
  strands: 1,
  gauge: { awg: 24 },
  build: 'jacketed',
}
const field = WIRES.find(({ id }) => id === 'wd-1a')!

describe('an own wire from a cut end', () => {
  test('resists as its gauge does, solid or stranded', () => {
    // 25.67 Ω per 1000 ft of 24 AWG (NBS Handbook 100), two wires, and 2 % for the twist.
    const ohms = (2 * 25.67 * 1.02) / 0.3048
    expect(made(wireFromMakeUp(END)).loopOhmPerKm / ohms).toBeCloseTo(1, 3)
    expect(made(wireFromMakeUp({ ...END, strands: 7 })).loopOhmPerKm / ohms).toBeCloseTo(1, 3)
  })

  test('comes near the capacitance and the mass of the built-in wires of its build', () => {
    const near = (makeUp: Partial<MakeUp>, id: string) => {
      const [own, known] = [
        made(wireFromMakeUp({ ...END, ...makeUp })),
        WIRES.find((wire) => wire.id === id)!,
      ]
      for (const figure of ['nanoFPerKm', 'loopMilliHPerKm', 'kgPerKm', 'loopOhmPerKm'] as const)
        expect(Math.abs(Math.log(own[figure] / known[figure])), `${id} ${figure}`).toBeLessThan(
          Math.log(1.75), // Four measured cords of one build lie between 52 and 92 nF/km: a cut end tells no more than that.
        )
    }
    near({}, 'copper-24')
    near({ build: 'side-by-side', gauge: { awg: 18 }, strands: 41 }, 'speaker-18')
    near({ build: 'bare-apart', metal: 'steel', gauge: { strandMm: 2.5 } }, 'fence-steel-2-5')
  })

  test('has more capacitance in vinyl than in polyethylene, and just what is typed where it is known', () => {
    const nanoF = (more: Partial<MakeUp>) => made(wireFromMakeUp({ ...END, ...more })).nanoFPerKm
    expect(nanoF({ insulation: 'vinyl' })).toBeGreaterThan(1.3 * nanoF({ insulation: 'polyethylene' }))
    expect(nanoF({ insulation: 'foam' })).toBeLessThan(nanoF({ insulation: 'polyethylene' }))
    const typed = made(wireFromMakeUp({ ...END, nanoFPerKm: 52 }))
    expect([typed.nanoFPerKm, typed.spread?.nanoFPerKm]).toEqual([52, undefined])
    expect(refusals(wireFromMakeUp({ ...END, nanoFPerKm: 0 }))).toHaveLength(1)
  })

  test('is one that a plan takes, of every metal and build, with a source for every figure', () => {
    for (const metal of Object.keys(METALS) as MakeUp['metal'][]) {
      for (const build of Object.keys(BUILDS) as MakeUp['build'][]) {
        const wire = made(wireFromMakeUp({ ...END, metal, build, strands: 3, gauge: { strandMm: 0.5 } }))
        expect(mended(putWire(drawnNet('ab'), wire)).catalog.wires).toHaveLength(1)
        for (const figure of figuresOf(wire))
          if (figure !== 'spoolsM') expect(sourceAt(wire.sources, figure), figure).toBeDefined()
      }
    }
  })

  test('is refused where nothing can be so', () => {
    expect(refusals(wireFromMakeUp({ ...END, strands: 0 }))).toEqual([
      '0 strands: give a whole number from 1 to 1,000.',
    ])
    expect(refusals(wireFromMakeUp({ ...END, gauge: { awg: 60 } }))).toEqual([
      'Gauge 60: give one from 0000 (-3) to 40.',
    ])
    expect(refusals(wireFromMakeUp({ ...END, gauge: { strandMm: 0 } }))).toHaveLength(1)
    expect(refusals(wireFromMakeUp({ ...END, build: 'bare-apart', spacingMm: 0.1 }))).toHaveLength(1)
  })
})

describe('an own wire from a reading', () => {
  const reading = { lengthM: 400, loopOhms: 50, tempC: 40, weather: 'dry', meterPct: 2 } as const

  test('has the ohms that were read, with the warmth taken out, and the spread of the meter', () => {
    const own = made(wireFromReading(field, reading))
    expect(own.loopOhmPerKm * (1 + own.tempCoeffPerC * 20) * 0.4).toBeCloseTo(50, 9)
    expect(own.spread?.loopOhmPerKm).toBe(2)
    expect([own.nanoFPerKm, own.spread?.nanoFPerKm]).toEqual([field.nanoFPerKm, field.spread?.nanoFPerKm])
    expect(sourceAt(own.sources, 'loopOhmPerKm')).toEqual({ says: 'Read on 400 m at 40 °C, dry: 50 Ω.' })
  })

  test('read wet is the capacitance of the wet wire', () => {
    const own = made(wireFromReading(field, { ...reading, weather: 'wet', nanoF: 30 }))
    expect(own.wetNanoFPerKm).toBeCloseTo(75, 9)
    expect(own.nanoFPerKm).toBe(field.nanoFPerKm)
  })

  test('read for insulation leaks as it does when dry, wet, or worn and wet', () => {
    // 80 kΩ on 0.4 km are 32 kΩ·km: 31.25 µS/km.
    const { loopOhms: _, ...nothing } = reading
    const leaks = [{}, { weather: 'wet' as const }, { weather: 'wet' as const, worn: true }].map((more) =>
      made(wireFromReading(field, { ...nothing, kOhms: 80, ...more })),
    )
    expect(leaks[0]!.dryMicroSPerKm).toBeCloseTo(31.25, 9)
    expect(leaks[1]!.wetMicroSPerKm).toBeCloseTo(31.25, 9)
    expect(leaks[2]!.wornMicroSPerKm).toBeCloseTo(31.25, 9)
    expect(leaks[2]!.spread?.wornMicroSPerKm).toBe(2)
  })

  test('is refused where nothing was read, or what cannot be', () => {
    const { loopOhms: _, ...nothing } = reading
    for (const wrong of [
      nothing,
      { ...reading, loopOhms: 0 },
      { ...reading, lengthM: 0 },
      { ...reading, meterPct: 0 },
      { ...reading, tempC: -400 },
    ])
      expect(refusals(wireFromReading(field, wrong))).toHaveLength(1)
  })
})
