import { expect, test } from 'vitest'
import {
  beginLine,
  drawLine,
  type LineMake,
  withBend,
  withoutLastBend,
} from '../../../src/map/tools/line-draft'
import type { StationId } from '../../../src/plan/id'
import type { Place } from '../../../src/plan/place'
import { EMPTY_PLAN, type Plan } from '../../../src/plan/plan'
import { addStation } from '../../../src/plan/station-edits'

const A = 'a' as StationId
const plan = addStation(EMPTY_PLAN, { id: A, name: 'Station 1', position: [10, 47] })

const station = (id: StationId): Place => ({ kind: 'station', id })
const ground = (lonDeg: number, latDeg = 47): Place => ({ kind: 'ground', position: [lonDeg, latDeg] })
const MAKE: LineMake = { wire: 'wd-1a', lay: 'surface', set: 'crank-1600', supply: null }

const draw = (before: Plan, start: Place, end: Place, make = MAKE) => {
  const draft = beginLine(before, start)
  return { draft, drawn: drawLine(before, draft, end, make) }
}

test('each leg is laid as the hand was set when its bend was clicked', () => {
  let draft = beginLine(plan, station(A))
  draft = withBend(draft, [10.01, 47], 'overhead')
  draft = withBend(draft, [10.02, 47], 'buried')
  draft = withBend(draft, [10.03, 47], 'water')
  draft = withoutLastBend(draft)
  const drawn = drawLine(plan, draft, ground(10.04), MAKE)
  const line = drawn.lines.get(draft.lineId)!
  expect(line.legs.map(({ lay }) => lay)).toEqual(['overhead', 'buried', 'surface'])
  expect(line.bends).toEqual([
    [10.01, 47],
    [10.02, 47],
  ])
})

test('a line on open ground brings both its stations, with the next free names, and a telephone to each', () => {
  const { draft, drawn } = draw(EMPTY_PLAN, ground(10), ground(10.04))
  expect([...drawn.stations.values()].map(({ name }) => name)).toEqual(['Station 1', 'Station 2'])
  const { sets, supply } = drawn.circuits.get(draft.circuitId)!
  expect([...sets]).toEqual([
    [draft.atStart.station, 'crank-1600'],
    [draft.atEnd.station, 'crank-1600'],
  ])
  expect(supply).toBeNull()
})

test('a line that carries a net on equips only the station that is new to it, with a telephone as the net has', () => {
  const first = draw(EMPTY_PLAN, ground(10), ground(10.04))
  const end = station(first.draft.atEnd.station)
  const { draft, drawn } = draw(first.drawn, end, ground(10.08), { ...MAKE, set: 'common-1-ren' })
  expect(drawn.circuits.size).toBe(1)
  const { sets, lines } = drawn.circuits.get(first.draft.circuitId)!
  expect(lines).toEqual([first.draft.lineId, draft.lineId])
  expect([...sets.values()]).toEqual(['crank-1600', 'crank-1600', 'crank-1600'])
})

test('a line that ends on wire is joined to it by a joint with no telephone', () => {
  const first = draw(EMPTY_PLAN, ground(10), ground(10.04))
  const wire: Place = { kind: 'wire', line: first.draft.lineId, leg: 0, position: [10.02, 47] }
  const { draft, drawn } = draw(first.drawn, ground(10.02, 47.01), wire)
  expect(drawn.lines.size).toBe(3)
  const [circuit] = drawn.circuits.values()
  expect(drawn.circuits.size).toBe(1)
  expect(new Set(circuit!.lines)).toEqual(new Set(drawn.lines.keys()))
  expect(circuit!.sets.has(draft.atEnd.station)).toBe(false)
  expect(circuit!.sets.size).toBe(3)
  expect(drawn.stations.get(draft.atEnd.station)?.position).toEqual([10.02, 47])
})

test('a new circuit gets the supply where it begins', () => {
  const make = { ...MAKE, set: 'common-1-ren', supply: 'feed-48' }
  const { draft, drawn } = draw(EMPTY_PLAN, ground(10), ground(10.04), make)
  expect(drawn.circuits.get(draft.circuitId)!.supply).toEqual({ type: 'feed-48', at: draft.atStart.station })
})

test('a line back to where it starts is none', () => {
  expect(draw(plan, station(A), station(A)).drawn).toBe(plan)
})
