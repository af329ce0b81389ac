import { describe, expect, test } from 'vitest'
import type { Wire } from '../../src/catalog/wire'
import { planSpools } from '../../src/materials/plan-spools'
import { flagSplices, splicePlacesOf, splicesOf, splicesToAvoid } from '../../src/materials/splice-limits'
import type { Piece } from '../../src/materials/spool-plan'
import { measureLine } from '../../src/measure/measure-line'
import type { MeasuredLine } from '../../src/measure/measured'
import type { HazardId, LineId, StationId } from '../../src/plan/id'
import { EMPTY_PLAN, type Hazard, type Line, type Plan } from '../../src/plan/plan'
import { METRES_PER_MILE } from '../../src/units'

const pieces = (...wireM: readonly number[]): Piece[] =>
  wireM.map((one, i) => ({ spool: `s${i}`, wireM: one, cutM: one, pair: 0 }))

/** A surface line of so much wire, with no tails. */
const surface = (wireM: number): MeasuredLine => ({
  id: 'l' as LineId,
  mapM: wireM,
  groundM: wireM,
  laidM: wireM,
  wireM,
  legs: [{ mapM: wireM, groundM: wireM, onGrid: false, laidM: wireM, bearingDeg: 0, lay: 'surface' }],
})

const codes = (measured: MeasuredLine, own: readonly Piece[]) =>
  flagSplices(measured, own).map(({ note }) => note.code)
const evenly = (wireM: number, count: number) => pieces(...new Array<number>(count).fill(wireM / count))

describe('class of a mile of wire: US Army subcourse SS0440, p. 3-4, par. 4 and 5', () => {
  test('8 splices are 4 per half mile: class A', () => {
    expect(codes(surface(METRES_PER_MILE), evenly(METRES_PER_MILE, 9))).toEqual([])
  })
  test('9 splices are more than 4 per half mile: class B', () => {
    expect(codes(surface(METRES_PER_MILE), evenly(METRES_PER_MILE, 10))).toEqual(['class-b-wire'])
  })
  test('4 splices in a line of 300 m do not make it class B', () => {
    expect(codes(surface(300), evenly(300, 5))).toEqual([])
  })
})

test('two splices 4 m apart are a cluster, two splices 5 m apart are not (10 to 15 ft: SS0440, p. 3-4, par. 3d)', () => {
  expect(codes(surface(504), pieces(250, 4, 250))).toEqual(['splice-cluster'])
  expect(codes(surface(505), pieces(250, 5, 250))).toEqual([])
})

//   A ──surface── · ══water══ · ╌╌overhead╌╌ B        each leg 1 km or so, tails of 8 m
const line: Line = {
  id: 'l' as LineId,
  from: 'A' as StationId,
  to: 'B' as StationId,
  bends: [
    [10, 55.01],
    [10, 55.02],
  ],
  legs: [{ lay: 'surface' }, { lay: 'water' }, { lay: 'overhead' }],
  wire: 'w',
  pairs: 1,
  return: 'pair',
}
const plan: Plan = {
  ...EMPTY_PLAN,
  stations: new Map(
    (['A', 'B'] as StationId[]).map((id, i) => [
      id,
      { id, name: id, note: '', position: [10, 55 + i * 0.03] as const },
    ]),
  ),
  lines: new Map([[line.id, line]]),
}
const measured = measureLine(plan, line)
const [surfaceLeg, waterLeg] = measured.legs

test('splices under water and on a span are flagged, one on the surface is not', () => {
  const { wireM } = measured
  const under = 8 + surfaceLeg!.laidM + 100
  const over = wireM - 100
  expect(codes(measured, pieces(500, wireM - 500))).toEqual([])
  expect(codes(measured, pieces(under, wireM - under))).toEqual(['splice-under-water'])
  expect(codes(measured, pieces(over, wireM - over))).toEqual(['splice-on-span'])
})

test('the stretches to avoid are the water leg and the overhead leg', () => {
  expect(splicesToAvoid(plan, line, measured)).toEqual([
    { fromM: 8 + surfaceLeg!.laidM, toM: 8 + surfaceLeg!.laidM + waterLeg!.laidM },
    { fromM: 8 + surfaceLeg!.laidM + waterLeg!.laidM, toM: measured.wireM - 8 },
  ])
})

test('and the wire within 10 m of a track that the line crosses', () => {
  const track: Hazard = {
    id: 'h' as HazardId,
    hazard: 'track',
    name: '',
    geometry: {
      type: 'LineString',
      coordinates: [
        [9.99, 55.005],
        [10.01, 55.005],
      ],
    },
  }
  const crossed: Plan = { ...plan, hazards: new Map([[track.id, track]]) }
  const onTrack = splicesToAvoid(crossed, line, measured).at(-1)!
  // Half-way along the surface leg; 20 m of ground with 20 % of slack.
  expect(onTrack.toM - onTrack.fromM).toBeCloseTo(20 * 1.2, 3)
  expect((onTrack.toM + onTrack.fromM) / 2).toBeCloseTo(8 + surfaceLeg!.laidM / 2, 0)
})

test('a splice stands on the map where the wire before it ends', () => {
  const own = pieces(8 + surfaceLeg!.laidM / 2, measured.wireM - 8 - surfaceLeg!.laidM / 2)
  const [splice] = splicesOf(plan, line, measured, own)
  expect(splice).toMatchObject({ legIndex: 0, pair: 0, spools: ['s0', 's1'] })
  expect(splice!.position[1]).toBeCloseTo(55.005, 4)
})

test('two pairs that are spliced at one place share it, and the places follow the line', () => {
  const measured = measureLine(plan, line)
  const placesOf = (...own: readonly (readonly [pair: number, wireM: number])[]) =>
    splicePlacesOf(
      plan,
      line,
      measured,
      own.map(([pair, wireM], i) => ({ spool: `s${i}`, wireM, cutM: wireM, pair })),
    ).map((splices) => splices.map(({ wireM, pair }) => [wireM, pair]))
  expect(placesOf([0, 400], [0, 400], [0, 100])).toEqual([[[400, 0]], [[800, 0]]])
  expect(placesOf([0, 400], [1, 300], [0, 500], [1, 600])).toEqual([[[300, 1]], [[400, 0]]])
  expect(placesOf([0, 400], [1, 400], [0, 500], [1, 500])).toEqual([
    [
      [400, 0],
      [400, 1],
    ],
  ])
  expect(placesOf([0, 900])).toEqual([])
})

test('the spool plan cuts a spool early to keep its splice out of the water', () => {
  const wire = { spoolsM: [2500], kgPerKm: 13.5 } as unknown as Wire
  const catalog = { wires: new Map([['w', wire]]), sets: new Map(), supplies: new Map() }
  const { pieces } = planSpools(plan, catalog, new Map([[line.id, measured]]))
  const own = pieces.get(line.id)!
  // Uncut, the first spool would end 2500 m along the wire, under water.
  expect(own[0]!.wireM).toBeCloseTo(8 + surfaceLeg!.laidM, 6)
  expect(codes(measured, own)).toEqual([])
  // Where nothing is to be avoided it is used up, but for half a splice.
  const onSurface = { ...measured, legs: measured.legs.map((leg) => ({ ...leg, lay: 'surface' as const })) }
  const plain = planSpools(plan, catalog, new Map([[line.id, onSurface]]))
  expect(plain.pieces.get(line.id)![0]!.wireM).toBeCloseTo(2500 - 0.25, 6)
})
