import { describe, expect, test } from 'vitest'
import { BUILT_IN } from '../../src/catalog/built-in'
import { mergeCatalogs } from '../../src/catalog/catalog'
import { drawProfile } from '../../src/figure/profile-drawing'
import { crossingsOf } from '../../src/hazard/crossings'
import { measureLine } from '../../src/measure/measure-line'
import type { HazardKind, Lay, Line, Plan } from '../../src/plan/plan'
import { lineProfile, profileAt } from '../../src/report/line-profile'
import { routeFigures } from '../../src/report/route-figures'
import type { Ground } from '../../src/terrain/ground'
import { groundFromGrids } from '../../src/terrain/ground-from-grids'
import { gridOver } from '../terrain/made-ground'
import { type Metres, planOf } from '../terrain/made-plan'

/** Ground that climbs 10 % to the east from 500 m at the middle, and 40 % beyond 600 m east. */
const slopeM = (eastM: number) => 500 + 0.1 * eastM + 0.3 * Math.max(0, eastM - 600)
const ground = groundFromGrids([gridOver(slopeM, 10)])
const wires = mergeCatalogs(BUILT_IN, { wires: [], sets: [], supplies: [] }).wires

const drawn = (plan: Plan, line: Line, over: Ground = ground) => ({
  legs: measureLine(plan, line, over).legs,
  crossings: crossingsOf(plan, line),
})

function profileOf(
  way: readonly Metres[],
  lays: readonly Lay[],
  hazards: readonly { kind: HazardKind; path: readonly Metres[] }[] = [],
) {
  const { plan, line } = planOf(way, lays, hazards)
  return { plan, line, profile: lineProfile(plan, line, drawn(plan, line), wires.get('wd-1a'), ground)! }
}

describe('the profile of a line', () => {
  test('follows an even slope by height, climb and steepness', () => {
    const { profile } = profileOf([[0, 0], [600, 0], [900, 0]], ['surface', 'surface']) // biome-ignore format: one line
    expect(profile.lengthM).toBeCloseTo(900, 0)
    expect(profile.ground.climbM).toBeCloseTo(60 + 120, 0)
    expect(profile.ground.descentM).toBe(0)
    expect(profile.legs.map(({ isSteep }) => isSteep)).toEqual([false, true])
    expect(profileAt(profile, 300)).toMatchObject({ leg: 0, lay: 'surface', wireOverM: undefined })
    expect(profileAt(profile, 300).heightM).toBeCloseTo(530, 0)
    expect(profileAt(profile, 750).heightM).toBeCloseTo(slopeM(750), 0)
  })

  test('hangs the wire of an overhead leg from supports of its height, with the sag of its spans between', () => {
    const { plan, line } = planOf([[0, 0], [120, 0]], ['overhead']) // biome-ignore format: one line
    const hung = { ...line, legs: [{ lay: 'overhead' as const, supportM: 6, spanM: 40, sagPct: 2 }] }
    const own = { ...plan, lines: new Map([[line.id, hung]]) }
    const profile = lineProfile(own, hung, drawn(own, hung), wires.get('wd-1a'), ground)!
    expect(profile.supports.map(({ atM }) => Math.round(atM))).toEqual([0, 40, 80, 120])
    for (const { heightM, topM } of profile.supports) expect(topM - heightM).toBeCloseTo(6, 1)
    // On an even slope the chord between two tops runs 6 m over the ground; 2 % of 40 m below it hangs the middle.
    expect(profileAt(profile, 20).wireOverM).toBeCloseTo(6 - 0.8, 1)
    expect(profileAt(profile, 60).wireOverM).toBeCloseTo(6 - 0.8, 1)
  })

  test('names what it crosses, where it crosses it', () => {
    const { profile } = profileOf([[0, 0], [800, 0]], ['buried'], [{ kind: 'railway', path: [[250, -50], [250, 50]] }]) // biome-ignore format: one line
    expect(profile.crossings).toHaveLength(1)
    expect(profile.crossings[0]!.atM).toBeCloseTo(250, 0)
    expect(profile.crossings[0]!.name).toBe('railway 0')
  })

  test('is none where no height is known', () => {
    const { plan, line } = planOf([[90_000, 0], [90_500, 0]], ['surface']) // biome-ignore format: one line
    expect(lineProfile(plan, line, drawn(plan, line), wires.get('wd-1a'), ground)).toBeUndefined()
    expect(lineProfile(plan, line, drawn(plan, line), wires.get('wd-1a'), undefined)).toBeUndefined()
  })
})

describe('its drawing', () => {
  const size = { width: 360, height: 200, letter: 10 }
  const yRange = (path: string) => {
    const ys = [...path.matchAll(/[ML][\d.-]+ ([\d.-]+)/g)].map((match) => Number(match[1]))
    return [Math.min(...ys), Math.max(...ys)] as const
  }

  test('keeps everything within its frame, and gives distances back as it took them', () => {
    const { profile } = profileOf([[0, 0], [600, 0], [900, 0]], ['surface', 'overhead']) // biome-ignore format: one line
    const drawing = drawProfile(profile, size, 'metric')
    for (const path of [drawing.ground, drawing.hung, drawing.steep]) {
      const [top, bottom] = yRange(path)
      expect(top).toBeGreaterThan(0)
      expect(bottom).toBeLessThanOrEqual(drawing.bottom)
    }
    for (const atM of [0, 123, 899]) expect(drawing.atMOf(drawing.xOf(atM))).toBeCloseTo(atM, 6)
    expect(drawing.atMOf(-50)).toBe(0)
    expect(drawing.steep).not.toBe('')
  })

  test('does not make a mountain of level ground', () => {
    const { plan, line } = planOf([[-800, 0], [-100, 0]], ['surface']) // biome-ignore format: one line
    const level = groundFromGrids([gridOver(() => 500, 10)])
    const drawing = drawProfile(
      lineProfile(plan, line, drawn(plan, line, level), undefined, level)!,
      size,
      'metric',
    )
    expect(drawing.stretch).toBeLessThanOrEqual(25)
    const [top, bottom] = yRange(drawing.ground)
    expect(bottom - top).toBeLessThan(0.5)
  })

  test('of a grid far finer than the drawing draws no more than can be seen, and its highest and lowest', () => {
    const { plan, line } = planOf([[-150, 0], [150, 0]], ['surface']) // biome-ignore format: one line
    const fine = groundFromGrids([
      gridOver((eastM) => 500.25 + (Math.abs(eastM) < 0.3 ? 40 : 0), 0.2, { sideM: 320 }),
    ])
    const profile = lineProfile(plan, line, drawn(plan, line, fine), undefined, fine)!
    const drawing = drawProfile(profile, size, 'metric')
    expect(profile.ground.samples.length).toBeGreaterThan(2500)
    expect(drawing.ground.match(/L/g)!.length).toBeLessThan(2 * size.width)
    expect(yRange(drawing.ground)[0]).toBeLessThan(drawing.yOf(530))
  })

  test('writes its axes in the units that the person reads', () => {
    const { profile } = profileOf([[0, 0], [800, 0]], ['surface']) // biome-ignore format: one line
    expect(drawProfile(profile, size, 'us').xUnit).toBe('ft')
    expect(drawProfile(profile, size, 'metric').xUnit).toBe('m')
  })
})

test('the figures of a way hold its climb, its cautions and the hours to lay it', () => {
  const { plan, line } = profileOf([[0, 0], [800, 0]], ['surface'], [{ kind: 'road', path: [[250, -50], [250, 50]] }]) // biome-ignore format: one line
  const figures = routeFigures(plan, line.id, ground)
  expect(figures.climbM).toBeCloseTo(slopeM(800) - 500, 0)
  expect(figures.cautions.map(({ code }) => code)).toContain('surface-over-road')
  const free = routeFigures({ ...plan, hazards: new Map() }, line.id, ground)
  expect(figures.hours).toBeGreaterThan(free.hours)
  expect(free.cautions.map(({ code }) => code)).not.toContain('surface-over-road')
})
