import { describe, expect, test } from 'vitest'
import { BUILT_IN } from '../../src/catalog/built-in'
import { mergeCatalogs } from '../../src/catalog/catalog'
import type { LoadingDistrict } from '../../src/catalog/overhead-loading'
import type { Wire } from '../../src/catalog/wire'
import { crossingsOf } from '../../src/hazard/crossings'
import { measurePlan } from '../../src/measure/measure-line'
import type { HazardKind, Lay, Leg, Plan } from '../../src/plan/plan'
import type { Caution } from '../../src/report/caution'
import { hazardCautions } from '../../src/report/hazard-cautions'
import type { Ground } from '../../src/terrain/ground'
import { groundFromGrids } from '../../src/terrain/ground-from-grids'
import { cautionText } from '../../src/words/caution-words'
import { tongueOf } from '../../src/words/tongue'
import { gridOver } from '../terrain/made-ground'
import { type Metres, planOf } from '../terrain/made-plan'

const catalog = mergeCatalogs(BUILT_IN, { wires: [], sets: [], supplies: [] })
const wire = BUILT_IN.wires[0]!.id

const crossingsIn = (plan: Plan) => [...plan.lines.values()].map((line) => crossingsOf(plan, line))
const cautionsIn = (plan: Plan, ground?: Ground) =>
  hazardCautions(plan, measurePlan(plan, ground), crossingsIn(plan), catalog, ground)

/** A line 600 m east; what it meets runs north and south 300 m out. */
function across(
  kind: HazardKind,
  lay: Lay,
  leg: Partial<Leg> = {},
  path: readonly Metres[] = [
    [300, 400],
    [300, -400],
  ],
) {
  const { plan, line } = planOf(
    [
      [0, 0],
      [600, 0],
    ],
    [lay],
    [{ kind, path }],
  )
  const laid = { ...line, wire, legs: [{ lay, ...leg }] }
  return { ...plan, wireTempC: 49, lines: new Map([[laid.id, laid]]) }
}
/** Ice apart: nearly every span hangs low under it, and it has tests of its own. */
const codes = (plan: Plan, ground?: Ground) =>
  cautionsIn(plan, ground)
    .map(({ code }) => code)
    .filter((code) => code !== 'overhead-ice')

describe('what a crossing calls for', () => {
  test.each<[HazardKind, Lay, string[]]>([
    ['road', 'surface', ['surface-over-road']],
    ['road', 'buried', []],
    ['track', 'surface', ['surface-over-track']],
    ['railway', 'surface', ['railway-not-under']],
    ['railway', 'buried', []],
    ['railway', 'overhead', ['railway-overhead']],
    ['water', 'surface', ['surface-over-water']],
    ['water', 'water', []],
    ['water', 'overhead', []],
    ['power-line', 'surface', ['power-line-crossing']],
    ['power-line', 'overhead', ['power-line-crossing']],
    ['keep-out', 'buried', ['keep-out-entered']],
  ])('a %s met %s: %j', (kind, lay, expected) => {
    expect(codes(across(kind, lay))).toEqual(expected)
  })

  test('says where, and names its source', () => {
    const [caution] = cautionsIn(across('road', 'surface'))
    expect(caution).toMatchObject({ where: 'l', hazard: 'h0' })
    expect(caution!.source).toMatch(/SS0440/)
    expect(caution!.place).toMatchObject({ legIndex: 0 })
    expect(caution!.place!.distanceM).toBeCloseTo(300, 0)
  })
})

describe('overhead wire over a road', () => {
  // US Army Signal subcourse SS0440, p. 1-25: 18 ft = 5.49 m over a primary road. A span of 30 m at 2 % sags 0.6 m.
  // 600 m in 20 spans of 30 m: 300 m out is a support, so the road lies 15 m further on.
  const midSpan: Metres[] = [
    [315, 400],
    [315, -400],
  ]
  const over = (kind: HazardKind, supportM: number) =>
    codes(across(kind, 'overhead', { supportM, spanM: 30.1, sagPct: 2 }, midSpan))

  test('on supports of 6 m is too low over a primary road, on 6.2 m is not', () => {
    expect(over('road', 6)).toEqual(['low-over-road'])
    expect(over('road', 6.2)).toEqual([])
  })

  test('clears a track at 15.5 ft, the greater of the two rules', () => {
    // NESC Rule 232 as a published summary gives it: 4.72 m; the military figure for a secondary road is 14 ft.
    expect(over('track', 5.2)).toContain('low-over-track')
    expect(over('track', 5.4)).toEqual([])
  })

  test('says how high supports would do', () => {
    const [caution] = cautionsIn(across('road', 'overhead', { supportM: 6, spanM: 30.1, sagPct: 2 }, midSpan))
    // A span of 30 m at 2 % sags 0.6 m, and a little more when it is hot; 18 ft and that is what supports must have.
    expect(caution).toMatchObject({ code: 'low-over-road', mustClearM: 18 * 0.3048 })
    const { hangsM, supportM } = caution as Extract<Caution, { code: 'low-over-road' }>
    expect(hangsM).toBeCloseTo(5.4, 1)
    expect(supportM - 18 * 0.3048).toBeCloseTo(6 - hangsM, 6)
  })

  test('hangs lower where a bank rises under it', () => {
    const bank = groundFromGrids([gridOver((e) => (e > 305 && e < 325 ? 3 : 0), 2, { sideM: 1400 })])
    const plan = across('track', 'overhead', { supportM: 5.4, spanM: 30.1, sagPct: 2 }, midSpan)
    expect(codes(plan, bank)).toContain('low-over-track')
  })
})

test('overhead wire over water hangs clear of it, by 14 ft where nobody sails', () => {
  const over = (supportM: number) =>
    codes(
      across('water', 'overhead', { supportM, spanM: 30.1, sagPct: 2 }, [
        [315, 400],
        [315, -400],
      ]),
    )
  expect(over(4.7)).toContain('low-over-water')
  expect(over(5.4)).not.toContain('low-over-water')
})

test('overhead wire is told how little ice it bears, once a line and at its worst leg', () => {
  const iceOf = (leg: Partial<Leg>, own: Partial<Wire> = {}) => {
    const plan = across('road', 'overhead', leg)
    const [line] = [...plan.lines.values()]
    const known = catalog.wires.get(line!.wire)!
    const wires = new Map([[known.id, { ...known, ...own }]])
    return hazardCautions(plan, measurePlan(plan), crossingsIn(plan), { ...catalog, wires }).filter(
      (caution) => caution.code === 'overhead-ice',
    )
  }
  const [ice, ...more] = iceOf({ supportM: 5.5, spanM: 30.1, sagPct: 2 })
  expect(more).toEqual([])
  expect(ice).toMatchObject({ iceMm: 25.4 / 4, mostShare: 0.6 })
  expect(ice!.hangsM).toBeLessThan(15.5 * 0.3048)
  const say = tongueOf(across('road', 'overhead'), 'metric')
  expect(cautionText(ice!, say)).toMatch(
    /leg 1: under 6\.\d mm of ice the wire hangs 4\.\d m over the ground/,
  )
  // High, strong and short enough it bears even half an inch of ice.
  expect(iceOf({ supportM: 9, spanM: 20, sagPct: 3 }, { breakN: 4000 })).toEqual([])
  // Weak wire tears: it is pulled beyond its strength.
  expect(iceOf({ supportM: 9, spanM: 60 }, { breakN: 200 })[0]!.pulledShare).toBeGreaterThan(1)
})

test('a plan that names its loading district is told of that one alone', () => {
  const under = (loadingDistrict: LoadingDistrict) => {
    const plan = { ...across('road', 'overhead', { supportM: 5.5, spanM: 30.1, sagPct: 2 }), loadingDistrict }
    const found = hazardCautions(plan, measurePlan(plan), crossingsIn(plan), catalog)
    return found.filter((caution) => caution.code === 'overhead-ice')
  }
  // NESC Rule 250B: a district's ice is 0, 1/4 and 1/2 in.
  expect(under('light')).toEqual([])
  expect(under('medium')[0]).toMatchObject({ district: 'medium', iceMm: 25.4 / 4 })
  const [heavy] = under('heavy')
  expect(heavy).toMatchObject({ district: 'heavy', iceMm: 25.4 / 2 })
  expect(heavy!.hangsM).toBeLessThan(under('medium')[0]!.hangsM)
  expect(cautionText(heavy!, tongueOf(across('road', 'overhead'), 'metric'))).toMatch(
    /under 12\.7 mm of ice, as the heavy loading district has it, the wire hangs .+\. Shorten its spans/,
  )
})

test('overhead wire too low for people or too tight for the cold is told by its leg', () => {
  const nothing: Metres[] = [
    [9000, 0],
    [9000, 1],
  ]
  expect(codes(across('road', 'overhead', { supportM: 3 }, nothing))).toEqual(['low-overhead'])
  expect(codes(across('road', 'overhead', { supportM: 6, sagPct: 0.02 }, nothing))).toEqual([
    'overhead-tension',
  ])
})

describe('near a power line', () => {
  const beside = (line: readonly Metres[], lays: Lay[]) =>
    codes(
      planOf(line, lays, [
        {
          kind: 'power-line',
          path: [
            [-2000, 0],
            [2000, 0],
          ],
        },
      ]).plan,
    )

  test('a line along it within 100 m for more than 300 m is told', () => {
    expect(
      beside(
        [
          [0, 60],
          [500, 60],
        ],
        ['surface'],
      ),
    ).toEqual(['power-line-parallel'])
    expect(
      beside(
        [
          [0, 60],
          [200, 60],
        ],
        ['surface'],
      ),
    ).toEqual([])
    expect(
      beside(
        [
          [0, 160],
          [500, 160],
        ],
        ['surface'],
      ),
    ).toEqual([])
  })

  test('a station that the power line would fall on is told', () => {
    expect(
      beside(
        [
          [0, 8],
          [0, 400],
        ],
        ['surface'],
      ),
    ).toEqual(['power-line-near'])
  })

  test('a crossing at a flat angle is told to turn square', () => {
    const { plan } = planOf(
      [
        [-300, -100],
        [300, 100],
      ],
      ['surface'],
      [
        {
          kind: 'power-line',
          path: [
            [-2000, 0],
            [2000, 0],
          ],
        },
      ],
    )
    const { angleDeg } = cautionsIn(plan)[0] as Extract<Caution, { code: 'power-line-crossing' }>
    // atan(100 / 300).
    expect(angleDeg).toBeCloseTo(18.4, 1)
  })
})

test('a line along a crest is told of lightning, where the ground is known', () => {
  const ridge = groundFromGrids([gridOver((_, n) => 150 - 0.25 * Math.abs(n), 30)])
  const { plan } = planOf(
    [
      [-500, 0],
      [500, 0],
    ],
    ['surface'],
  )
  expect(codes(plan, ridge)).toEqual(['ridge-lightning'])
  expect(codes(plan)).toEqual([])
})

test('nothing changed, nothing is judged again; a hazard moved is', () => {
  const plan = across('road', 'surface')
  const measured = measurePlan(plan)
  const first = hazardCautions(plan, measured, crossingsIn(plan), catalog)
  expect(hazardCautions(plan, measured, crossingsIn(plan), catalog)[0]).toBe(first[0])
  const moved = across('road', 'surface', {}, [
    [310, 400],
    [310, -400],
  ])
  const hazardMoved = { ...plan, hazards: moved.hazards }
  expect(hazardCautions(hazardMoved, measured, crossingsIn(hazardMoved), catalog)[0]).not.toBe(first[0])
})
