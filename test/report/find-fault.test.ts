import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { circuitModel } from '../../src/budget/circuit-model'
import { conditionsOf } from '../../src/budget/conditions'
import { wayReadings } from '../../src/budget/way-readings'
import { BUILT_IN } from '../../src/catalog/built-in'
import { mergeCatalogs } from '../../src/catalog/catalog'
import { measurePlan } from '../../src/measure/measure-line'
import type { CircuitId, LineId, StationId } from '../../src/plan/id'
import { EMPTY_PLAN, type Line, type Plan } from '../../src/plan/plan'
import { type FaultReading, findFault } from '../../src/report/find-fault'
import { faultOnGround, faultSentence, spreadSentence, tagsSentence } from '../../src/words/fault-words'
import { tongueOf } from '../../src/words/tongue'
import { builtInWire } from '../reference/built-in-entry'

const station = (id: string, name: string, latDeg: number) =>
  [id as StationId, { id: id as StationId, name, note: '', position: [11, latDeg] as const }] as const
const line = (id: string, from: string, to: string, bends: Line['bends']): Line => ({
  ...{ id: id as LineId, from: from as StationId, to: to as StationId, bends },
  legs: [...bends, null].map(() => ({ lay: 'surface' as const })),
  ...{ wire: 'wd-1a', pairs: 1, return: 'pair' as const },
})

/** Camp ──(bend 1)──(bend 2)── Ford ──(bend 1)── Mill; the second line is drawn from Mill. */
const PLAN: Plan = {
  ...EMPTY_PLAN,
  stations: new Map([
    station('camp', 'Camp', 47),
    station('ford', 'Ford', 47.015),
    station('mill', 'Mill', 47.03),
  ]),
  lines: new Map(
    [
      line('l1', 'camp', 'ford', [
        [11, 47.005],
        [11, 47.01],
      ]),
      line('l2', 'mill', 'ford', [[11, 47.025]]),
    ].map((each) => [each.id, each] as const),
  ),
}
const CIRCUIT = {
  ...{ id: 'c1' as CircuitId, name: 'Net', lines: ['l1' as LineId, 'l2' as LineId], supply: null },
  sets: new Map([
    ['camp' as StationId, 'crank-1600'],
    ['mill' as StationId, 'crank-1600'],
  ]),
}
const MEASURED = measurePlan(PLAN)
const MODEL = circuitModel(PLAN, CIRCUIT, mergeCatalogs(BUILT_IN, PLAN.catalog), MEASURED)
const TODAY = conditionsOf('dry', 20)
const [L1_M, L2_M] = [MEASURED.get('l1' as LineId)!.wireM, MEASURED.get('l2' as LineId)!.wireM]
const WIRE = builtInWire('wd-1a')
const SAY = tongueOf(PLAN, 'metric')
const ohmsOf = (wireM: number) => (WIRE.loopOhmPerKm * wireM) / 1000

const ask = (reading: FaultReading, from = 'camp', to = 'mill') => {
  const question = { from, to, reading }
  const answer = findFault(MODEL, TODAY, question)
  return {
    answer,
    says: faultSentence(PLAN, MEASURED, question, answer, SAY),
    spread: spreadSentence(answer, SAY),
    tags: tagsSentence(PLAN, MEASURED, answer, SAY),
  }
}

describe('a short by its loop ohms', () => {
  test('is told by the wire from the meter, and by the last bend on the ground', () => {
    // 1500 m of wire: the tail of 8 m, then 20 % of slack; two legs of 556 m lie behind.
    const { answer, says } = ask({ kind: 'short', ohms: ohmsOf(1500), shortOhms: 0 })
    expect(answer).toMatchObject({ kind: 'place', line: 'l1', forward: true })
    const groundM = (1500 - 8) / 1.2
    const pastM = groundM - 2 * MEASURED.get('l1' as LineId)!.legs[0]!.groundM
    expect(says).toBe(
      `About 1500 m of wire from Camp, on Camp – Ford: ${Math.round(pastM / 10) * 10} m past bend 2.`,
    )
  })
  test('leaves out the ohms that the short itself is said to have', () => {
    const { answer } = ask({ kind: 'short', ohms: ohmsOf(800) + 12, shortOhms: 12 })
    expect(answer).toMatchObject({ totalM: expect.closeTo(800, 6) })
  })
  test('on a line that is drawn the other way is told from where one comes', () => {
    const { answer, says } = ask({ kind: 'short', ohms: ohmsOf(L1_M + 100), shortOhms: 0 })
    expect(answer).toMatchObject({ line: 'l2', forward: false, wireM: expect.closeTo(L2_M - 100, 6) })
    // 100 m of wire without the tail of 8 m and the slack.
    expect(says).toContain(`on Mill – Ford: ${Math.round((100 - 8) / 1.2)} m past Ford.`)
  })
  test('lies between two tags, named as one comes to them', () => {
    const near = ask({ kind: 'short', ohms: ohmsOf(1), shortOhms: 0 })
    expect(near.tags).toMatch(/^It lies between tags 1\/1 \(Camp\) and 1\/2 \(.+\)\.$/)
    const past = ask({ kind: 'short', ohms: ohmsOf(L1_M + 100), shortOhms: 0 })
    expect(past.tags).toMatch(/^It lies between tags 2\/\d+ \(Ford\) and 2\/\d+ \(.+\)\.$/)
    const [, first, second] = past.tags.match(/2\/(\d+).*2\/(\d+)/)!.map(Number)
    expect(first! - second!).toBe(1)
  })
  test('is unsure by the temperature of the wire: 10 °C are 4 % of a copper wire', () => {
    const { answer } = ask({ kind: 'short', ohms: ohmsOf(1500), shortOhms: 0 })
    if (answer.kind !== 'place') throw new Error(answer.kind)
    expect(answer.mostM / answer.totalM).toBeCloseTo(1 / (1 - 10 * WIRE.tempCoeffPerC), 6)
    expect(answer.leastM / answer.totalM).toBeCloseTo(1 / (1 + 10 * WIRE.tempCoeffPerC), 6)
  })
  test('beyond the whole way is said to be, with the ohms of the way', () => {
    expect(ask({ kind: 'short', ohms: 5000, shortOhms: 0 }).says).toMatch(
      /more than the whole way to Mill has, \d+ Ω: the fault lies beyond/,
    )
  })
  test('before the meter cannot be', () => {
    expect(ask({ kind: 'short', ohms: 5, shortOhms: 50 }).says).toMatch(/check them/)
  })
})

describe('readings that know no temperature', () => {
  const whole = wayReadings(MODEL, TODAY, 'camp', 'mill')!
  test.each<[string, FaultReading]>([
    ['Murray', { kind: 'murray', faultyArm: 100, goodArm: 900 }],
    // Equal arms: R = L − 2x with x a tenth of L.
    ['Varley with the loop read', { kind: 'varley', rheostatOhms: 80, loopOhms: 100 }],
    ['capacitance from both ends', { kind: 'open-both-ends', nearNanoF: 20, farNanoF: 80 }],
  ])('%s finds a fifth of the way', (_, reading) => {
    const { answer, spread } = ask(reading)
    expect(answer).toMatchObject({ kind: 'place', totalM: expect.closeTo(whole.wireM / 5, 6) })
    expect(spread).toBe('The temperature of the wire does not matter to this reading.')
  })
  test('a bridge is refused where a line returns by earth', () => {
    const lines = MODEL.lines.map((each) => ({ ...each, electrodeOhms: [50, 50] as const }))
    const reading = { kind: 'murray', faultyArm: 1, goodArm: 9 } as const
    expect(findFault({ ...MODEL, lines }, TODAY, { from: 'camp', to: 'mill', reading })).toMatchObject({
      kind: 'refused',
      why: 'bridge-by-earth',
    })
  })
})

test('wherever a short lies, readings from both ends find it, whatever ohms it has', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.001, max: 0.999, noNaN: true }),
      fc.integer({ min: 0, max: 500 }),
      fc.boolean(),
      (part, shortOhms, fromMill) => {
        const totalM = part * (L1_M + L2_M)
        const [nearOhms, farOhms] = [ohmsOf(totalM) + shortOhms, ohmsOf(L1_M + L2_M - totalM) + shortOhms]
        const [from, to] = fromMill ? ['mill', 'camp'] : ['camp', 'mill']
        const { answer } = ask({ kind: 'short-both-ends', nearOhms, farOhms }, from, to)
        if (answer.kind !== 'place') throw new Error(answer.kind)
        expect(answer.totalM).toBeCloseTo(totalM, 6)
        const place = faultOnGround(PLAN, MEASURED, answer)!
        const fromCampM = fromMill ? L1_M + L2_M - totalM : totalM
        // The net runs straight north, so latitude follows the wire.
        expect(place.position[1]).toBeGreaterThanOrEqual(fromCampM < L1_M ? 47 : 47.015 - 1e-9)
        expect(answer.line).toBe(fromCampM < L1_M ? 'l1' : 'l2')
        expect(answer.forward).toBe((answer.line === 'l1') !== fromMill)
      },
    ),
    { numRuns: 100 },
  )
})
