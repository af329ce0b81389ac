import { expect, test } from 'vitest'
import { groundFromGrids } from '../../src/terrain/ground-from-grids'
import { isSteep, profileAlong } from '../../src/terrain/profile'
import { gridOver, place } from './made-ground'

// A cone of slope 0.4 with its top, 1500 m, in the middle.
const cone = groundFromGrids([gridOver((e, n) => 1500 - 0.4 * Math.hypot(e, n), 20)])

test('a line over a cone climbs to its top and comes down again', () => {
  const profile = profileAlong(cone, [place(-1000, 0), place(0, 0), place(500, 0)])
  // The nearest points of the grid are 14 m from the top, and so 5.7 m under it.
  expect(Math.abs(profile.climbM - 400)).toBeLessThan(6)
  expect(Math.abs(profile.descentM - 200)).toBeLessThan(6)
  expect(profile.climbM - profile.descentM).toBeCloseTo(200, 1)
  expect(profile.lowestM).toBeCloseTo(1100, 0)
  expect(profile.samples[0]).toMatchObject({ distanceM: 0, legIndex: 0 })
  expect(profile.samples.at(-1)!.distanceM).toBeCloseTo(1500, 1)
  expect(profile.samples.at(-1)!.heightM).toBeCloseTo(1300, 1)
  // The places are laid out on a flat frame, which is good to a millimetre over a kilometre.
  expect(profile.samples.filter((s) => Math.abs(s.distanceM - 1000) < 1e-3)).toHaveLength(1)
})

test('a leg straight up a slope of 40 % is steep, and one around it is not', () => {
  const up = profileAlong(cone, [place(-1000, 0), place(-200, 0)]).legs[0]!
  expect(up.meanPct).toBeCloseTo(40, 1)
  expect(up.steepestPct).toBeCloseTo(40, 1)
  expect(isSteep(up)).toBe(true)
  const around = profileAlong(cone, [place(-1000, -150), place(-1000, 150)]).legs[0]!
  expect(isSteep(around)).toBe(false)
})

test('distances follow the measured legs where they are given', () => {
  const profile = profileAlong(cone, [place(-1000, 0), place(0, 0), place(500, 0)], [1001, 502])
  expect(profile.legs.map((leg) => leg.endM)).toEqual([1001, 1503])
})

test('a grid’s whole metres do not add up to a climb', () => {
  const flat = groundFromGrids([gridOver((e) => 200 + Math.sin(e) * 0.9, 30, { whole: true })])
  const { climbM, descentM } = profileAlong(flat, [place(-2000, 0), place(2000, 0)])
  expect(climbM + descentM).toBeLessThanOrEqual(2)
})

test('off the grid heights and slopes are not known, and the rest of the profile is', () => {
  const profile = profileAlong(cone, [place(2000, 0), place(4000, 0), place(2000, 10)])
  expect(profile.samples.some((s) => s.heightM === undefined)).toBe(true)
  expect(profile.highestM).toBeCloseTo(700, 0)
  expect(profile.legs[0]).toMatchObject({ meanPct: undefined, steepestPct: undefined })
})
