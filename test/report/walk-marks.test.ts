import { expect, test } from 'vitest'
import { nearestOnLine } from '../../src/measure/nearest-on-line'
import { vertexOf } from '../../src/plan/plan'
import { reportPlan } from '../../src/report/report-plan'
import { walkMarks } from '../../src/report/walk-marks'
import { stretchTo } from '../../src/walk/stretch-to'
import { LINE, SMALL_PLAN } from '../panel/small-plan'

const line = { ...SMALL_PLAN.lines.get(LINE)!, bends: [[11.005, 47.005]] as [number, number][] }
const PLAN = { ...SMALL_PLAN, lines: new Map([[LINE, line]]) }
const measured = reportPlan(PLAN).lines[0]!

test('a walker comes to bends, tags, splices and the end in their order, and turns as the way does', () => {
  const marks = walkMarks(PLAN, line, measured)
  expect(marks.map(({ groundM }) => groundM)).toEqual(
    marks.map(({ groundM }) => groundM).toSorted((a, b) => a - b),
  )
  expect(marks.filter(({ code }) => code === 'tag')).toHaveLength(measured.tags.length)
  expect(marks.filter(({ code }) => code === 'splice')).toHaveLength(measured.splices.length)
  const bend = marks.find((mark) => mark.code === 'bend')!
  // Out to the north-east, on to the north-west: a degree of longitude is cos 47° of one of latitude, so atan 0.68 = 34° each way.
  expect(bend.turnDeg).toBeCloseTo(-68.6, 0)
  expect(bend.groundM).toBeCloseTo(measured.legs[0]!.groundM, 6)
  const end = marks.find((mark) => mark.code === 'end')!
  expect(end).toMatchObject({ station: line.to, groundM: measured.groundM, wireM: measured.wireM })
})

test('from the far end all comes the other way round', () => {
  const [there, back] = [walkMarks(PLAN, line, measured), walkMarks(PLAN, line, measured, 'from')]
  expect(back.map(({ groundM }) => groundM)).toEqual(
    back.map(({ groundM }) => groundM).toSorted((a, b) => b - a),
  )
  const [out, home] = [there, back].map((marks) => marks.find((mark) => mark.code === 'bend')!)
  // Whoever comes back turns to the other hand, and leaves the bend against the way that he came by.
  expect(home!.turnDeg).toBeCloseTo(-out!.turnDeg, 9)
  expect(home!.bearingDeg).toBeCloseTo((measured.legs[0]!.bearingDeg + 180) % 360, 9)
  expect(home!.groundM).toBe(out!.groundM)
  expect(back.at(-1)).toMatchObject({ code: 'end', station: line.from, groundM: 0, wireM: 0 })
  const splicesOf = (marks: typeof there) =>
    marks.flatMap((mark) => (mark.code === 'splice' ? [mark.spools] : []))
  expect(splicesOf(back)).toEqual(
    splicesOf(there)
      .map(([a, b]) => [b, a])
      .toReversed(),
  )
})

test('what is done ends where one stands, and begins where the last ended that one has passed', () => {
  const before = [
    { fromM: 0, toM: 300 },
    { fromM: 900, toM: 1000 },
  ]
  expect(stretchTo(before, 500, 'to', 1200)).toEqual({ fromM: 300, toM: 500 })
  expect(stretchTo(before, 1100, 'to', 1200)).toEqual({ fromM: 1000, toM: 1100 })
  expect(stretchTo(before, 200, 'to', 1200)).toBeNull()
  expect(stretchTo([], 200, 'to', 1200)).toEqual({ fromM: 0, toM: 200 })
  expect(stretchTo(before, 500, 'from', 1200)).toEqual({ fromM: 500, toM: 900 })
  expect(stretchTo(before, 1100, 'from', 1200)).toEqual({ fromM: 1100, toM: 1200 })
  expect(stretchTo(before, 950, 'from', 1200)).toBeNull()
})

test('a position is snapped to the place of the line that is nearest', () => {
  const at = nearestOnLine(PLAN, measured, line, vertexOf(PLAN, line, 1))
  expect(at.offM).toBeLessThan(1e-6)
  expect(at.groundM).toBeCloseTo(measured.legs[0]!.groundM, 6)
  // 0.001° of longitude east of a line that runs 34° off north: 75.9 m · cos 34.5°, by the ellipsoid's radius at 47°.
  const beside = nearestOnLine(PLAN, measured, line, [11.0035, 47.0025])
  expect(beside.offM).toBeCloseTo(62.7, 0)
  const beyond = nearestOnLine(PLAN, measured, line, [11, 47.02])
  expect(beyond.groundM).toBeCloseTo(measured.groundM, 6)
})
