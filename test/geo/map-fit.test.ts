import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fitPicture, groundPoint, type Mark, onGround, onPicture, residualsM } from '../../src/geo/map-fit'
import { projectionOf } from '../../src/geo/projection'

const MERCATOR = projectionOf({ kind: 'web-mercator' })
const positionOf = (eastM: number, northM: number) => MERCATOR.inverse(eastM, northM)

// By gdaltransform (test/geo/fixtures/make-fits.sh).
const LINES = readFileSync('test/geo/fixtures/fitted-places.txt', 'utf8')
  .trim()
  .split('\n')
  .map((line) => line.split(' '))
const MARKS: readonly Mark[] = LINES.filter(([kind]) => kind === 'mark').map(([, x, y, east, north]) => ({
  x: Number(x),
  y: Number(y),
  position: positionOf(Number(east), Number(north)),
}))

describe('a sheet is fitted as GDAL fits it', () => {
  test.each(LINES.filter(([kind]) => kind !== 'mark'))('%s, order %s: %s %s', (kind, order, a, b, c, d) => {
    const fit = fitPicture(order === '1' ? 'affine' : 'second-order', MARKS)!
    const [x, y] = (kind === 'ground' ? onGround : onPicture)(fit, Number(a), Number(b))
    // Micrometres, and millionths of a pixel: beyond is the rounding of places to degrees and back.
    expect(Math.hypot(x - Number(c), y - Number(d))).toBeLessThan(1e-5)
  })
})

test('the mark that was set down wrongly misses most, in metres on the ground', () => {
  const [eastM, northM] = groundPoint(MARKS[4]!.position)
  const latDeg = MARKS[4]!.position[1]
  // 300 m on the ground are more on Mercator's map: by 1 / cos of the latitude.
  const off = 300 / Math.cos((latDeg * Math.PI) / 180)
  const wrong = MARKS.map((mark, i) =>
    i === 4 ? { ...mark, position: positionOf(eastM + off, northM) } : mark,
  )
  const missed = residualsM(fitPicture('affine', wrong)!, wrong)
  expect(missed.indexOf(Math.max(...missed))).toBe(4)
  // The others draw the sheet along, so that it misses by less than it is off; in the middle of eight marks by about seven eighths.
  expect(missed[4]).toBeGreaterThan(240)
  expect(missed[4]).toBeLessThan(280)
})

test('three marks are met by an affine fit, four by a projective one', () => {
  const three = MARKS.slice(0, 3)
  for (const missedM of residualsM(fitPicture('affine', three)!, three)) expect(missedM).toBeLessThan(1e-6)
  const four = MARKS.slice(0, 4)
  for (const missedM of residualsM(fitPicture('projective', four)!, four)) expect(missedM).toBeLessThan(1e-6)
})

test('a photograph at a slant is a projective fit, and no other is', () => {
  // A plane seen by a pinhole: Hartley and Zisserman (2004), section 2.3. Lines stay lines, and no pair of figures is 0.
  const ground = (x: number, y: number) => {
    const below = 1 + 8e-5 * x - 3e-5 * y
    return positionOf(1.1e6 + (1.6 * x - 0.2 * y + 40) / below, 5.96e6 - (0.1 * x + 1.9 * y - 20) / below)
  }
  const marks = [0, 1000, 2500, 4000].flatMap((x) =>
    [0, 1700, 3000].map((y) => ({ x, y, position: ground(x, y) })),
  )
  const missed = (kind: Parameters<typeof fitPicture>[0]) =>
    Math.max(...residualsM(fitPicture(kind, marks)!, marks))
  expect(missed('projective')).toBeLessThan(1e-3)
  expect(missed('affine')).toBeGreaterThan(100)
  const fit = fitPicture('projective', marks)!
  const [x, y] = onPicture(fit, ...groundPoint(ground(1234, 2345)))
  expect(Math.hypot(x - 1234, y - 2345)).toBeLessThan(1e-4)
})

test('marks that are too few, or lie on one line, fit nothing', () => {
  expect(fitPicture('affine', MARKS.slice(0, 2))).toBeUndefined()
  expect(fitPicture('projective', MARKS.slice(0, 3))).toBeUndefined()
  expect(fitPicture('second-order', MARKS.slice(0, 5))).toBeUndefined()
  const line = [0, 1, 2, 3].map((i) => ({
    x: 100 * i,
    y: 50 * i,
    position: positionOf(1e6 + 10 * i, 6e6 + i),
  }))
  expect(fitPicture('affine', line)).toBeUndefined()
})

test('a sheet across the antimeridian is one sheet', () => {
  const marks = [
    { x: 0, y: 0, position: [179.9, -17] as const },
    { x: 1000, y: 0, position: [-179.9, -17] as const },
    { x: 0, y: 1000, position: [179.9, -17.2] as const },
  ]
  const [eastM] = onGround(fitPicture('affine', marks)!, 500, 500)
  expect(MERCATOR.inverse(eastM, 0)[0]).toBeCloseTo(180, 6)
})

test('an affine fit there and back is where it was, wherever the sheet lies', () => {
  const figure = fc.double({ min: -1, max: 1, noNaN: true })
  fc.assert(
    fc.property(figure, figure, fc.double({ min: 0.5, max: 40, noNaN: true }), (turn, slant, scale) => {
      const ground = (x: number, y: number) =>
        positionOf(
          5e5 + scale * (x * Math.cos(turn) - y * Math.sin(turn + slant / 3)),
          4e6 - scale * (x * Math.sin(turn) + y * Math.cos(turn + slant / 3)),
        )
      const marks = [
        [0, 0],
        [4000, 100],
        [3900, 3000],
        [80, 2900],
      ].map(([x, y]) => ({ x: x!, y: y!, position: ground(x!, y!) }))
      const fit = fitPicture('affine', marks)!
      const [x, y] = onPicture(fit, ...onGround(fit, 1000, 2000))
      return Math.hypot(x - 1000, y - 2000) < 1e-6
    }),
  )
})
