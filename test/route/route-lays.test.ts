import { describe, expect, test } from 'vitest'
import { crossingsAlong } from '../../src/hazard/crossings'
import type { HazardKind } from '../../src/plan/plan'
import { layCrossings } from '../../src/route/route-lays'
import { metresOf } from '../terrain/made-ground'
import { at, type Metres, planOf } from '../terrain/made-plan'

const way = [at([0, 0]), at([600, 0])]
const hazardsOf = (...drawn: { kind: HazardKind; path: Metres[] }[]) => [
  ...planOf(
    [
      [0, 0],
      [600, 0],
    ],
    ['surface'],
    drawn,
  ).plan.hazards.values(),
]
const northward = (eastM: number): Metres[] => [
  [eastM, 300],
  [eastM, -300],
]

describe('a way laid out', () => {
  test('lies on the surface where it crosses nothing', () => {
    expect(layCrossings([], way)).toEqual({ bends: [], lays: ['surface'] })
  })

  test('goes under a road, from one verge to the other', () => {
    const { bends, lays } = layCrossings(hazardsOf({ kind: 'road', path: northward(300) }), way)
    expect(lays).toEqual(['surface', 'buried', 'surface'])
    expect(bends.map((bend) => Math.round(metresOf(bend)[0]))).toEqual([294, 306])
  })

  test('is buried longer where it crosses aslant', () => {
    const aslant: Metres[] = [
      [0, -300],
      [600, 300],
    ]
    const { bends } = layCrossings(hazardsOf({ kind: 'road', path: aslant }), way)
    // 6 m square across is 6 √2 m at 45°.
    expect(metresOf(bends[1]!)[0] - metresOf(bends[0]!)[0]).toBeCloseTo(12 * Math.SQRT2, 1)
  })

  test('is laid as water through a lake, bank to bank', () => {
    const lake: Metres[] = [
      [200, -50],
      [200, 50],
      [400, 50],
      [400, -50],
      [200, -50],
    ]
    const { bends, lays } = layCrossings(hazardsOf({ kind: 'water', path: lake }), way)
    expect(lays).toEqual(['surface', 'water', 'surface'])
    expect(bends.map((bend) => Math.round(metresOf(bend)[0]))).toEqual([192, 408])
  })

  test('goes under a road and the rails beside it in one', () => {
    const both = hazardsOf({ kind: 'road', path: northward(300) }, { kind: 'railway', path: northward(311) })
    expect(layCrossings(both, way).lays).toEqual(['surface', 'buried', 'surface'])
  })

  test('keeps its bends, and is buried up to a station by the road', () => {
    const bent = [at([0, 0]), at([300, 40]), at([600, 0])]
    const { bends, lays } = layCrossings(hazardsOf({ kind: 'road', path: northward(598) }), bent)
    expect(lays).toEqual(['surface', 'surface', 'buried'])
    expect(bends[0]).toBe(bent[1])
  })

  test('has the crossings that it had, each under a lay made for it', () => {
    const hazards = hazardsOf({ kind: 'road', path: northward(100) }, { kind: 'water', path: northward(400) })
    const { bends, lays } = layCrossings(hazards, way)
    const legs = lays.map((lay) => ({ lay }))
    expect(
      crossingsAlong(hazards, [way[0]!, ...bends, way[1]!], legs).map(({ kind, lay }) => [kind, lay]),
    ).toEqual([
      ['road', 'buried'],
      ['water', 'water'],
    ])
  })
})
