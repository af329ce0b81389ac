import fc from 'fast-check'
import { expect, test } from 'vitest'
import { measureLine } from '../../src/measure/measure-line'
import { pointAtGroundM, pointAtWireM, wireMAtGroundM, wireMOnLeg } from '../../src/measure/place-on-line'
import type { LineId, StationId } from '../../src/plan/id'
import { EMPTY_PLAN, type Line, type Plan } from '../../src/plan/plan'

const A = 'a' as StationId
const B = 'b' as StationId

const line: Line = {
  id: 'l' as LineId,
  from: A,
  to: B,
  bends: [
    [179.99, -41],
    [-179.99, -41.01],
  ],
  legs: [{ lay: 'surface' }, { lay: 'water' }, { lay: 'overhead' }],
  wire: 'w',
  pairs: 1,
  return: 'pair',
}
const plan: Plan = {
  ...EMPTY_PLAN,
  stations: new Map([
    [A, { id: A, name: 'A', note: '', position: [179.97, -41] }],
    [B, { id: B, name: 'B', note: '', position: [-179.97, -41] }],
  ]),
  lines: new Map([[line.id, line]]),
}
const measured = measureLine(plan, line)

//   A ──surface── · ══water══ · ╌╌overhead╌╌ B        the antimeridian runs through the water leg
test('the first tail lies at one station and the last at the other', () => {
  for (const wireM of [-5, 0, 7.9]) {
    expect(pointAtWireM(plan, measured, line, wireM)).toEqual({
      position: [179.97, -41],
      legIndex: 0,
      groundM: 0,
    })
  }
  for (const wireM of [measured.wireM - 7.9, measured.wireM, measured.wireM + 5]) {
    const end = pointAtWireM(plan, measured, line, wireM)
    expect(end.position).toEqual([-179.97, -41])
    expect(end.groundM).toBeCloseTo(measured.groundM, 6)
  }
})

test('a bend lies where the wire of the legs before it ends', () => {
  const bend = pointAtWireM(plan, measured, line, 8 + measured.legs[0]!.laidM)
  expect(bend.position).toEqual([179.99, -41])
  expect(bend.groundM).toBeCloseTo(measured.legs[0]!.groundM, 9)
})

test('the middle of the water leg lies on the antimeridian', () => {
  const { position } = pointAtGroundM(
    plan,
    measured,
    line,
    measured.legs[0]!.groundM + measured.legs[1]!.groundM / 2,
  )
  expect(180 - Math.abs(position[0])).toBeLessThan(1e-6)
  expect(position[1]).toBeCloseTo(-41.005, 5)
})

test('wire to ground and back is the same wire', () => {
  fc.assert(
    fc.property(fc.double({ min: 8, max: measured.wireM - 8, noNaN: true }), (wireM) => {
      const { groundM } = pointAtWireM(plan, measured, line, wireM)
      return Math.abs(wireMAtGroundM(measured, groundM) - wireM) < 1e-6
    }),
  )
})

test('a place on a leg has the wire of the tail, of the legs before, and of its share of the leg', () => {
  expect(wireMOnLeg(measured, 1, 0.25)).toBeCloseTo(
    8 + measured.legs[0]!.laidM + measured.legs[1]!.laidM / 4,
    9,
  )
})
