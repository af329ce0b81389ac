import { expect, test } from 'vitest'
import type { Position } from '../../src/geo/position'
import {
  addHazard,
  moveHazardVertex,
  removeHazard,
  removeHazardVertex,
  renameHazard,
  setHazardKind,
} from '../../src/plan/hazard-edits'
import type { HazardId } from '../../src/plan/id'
import { EMPTY_PLAN } from '../../src/plan/plan'
import { mended, refusals } from './drawn-net'

const id = 'h' as HazardId
const CORNERS: readonly Position[] = [
  [10, 50],
  [10.01, 50],
  [10.01, 50.01],
]
const drawn = (shape: 'line' | 'area', vertices = CORNERS) =>
  addHazard(EMPTY_PLAN, { id, hazard: 'water', name: 'Tarn', shape, vertices })
const coordinates = (plan: typeof EMPTY_PLAN) => plan.hazards.get(id)?.geometry.coordinates

test('an area closes by itself, once', () => {
  const ring = [...CORNERS, CORNERS[0]]
  expect(coordinates(mended(drawn('area')))).toEqual([ring])
  expect(coordinates(mended(drawn('area', [...CORNERS, CORNERS[0]!])))).toEqual([ring])
  expect(coordinates(mended(drawn('line')))).toEqual(CORNERS)
})

test('a corner clicked twice counts once, and too few are refused', () => {
  expect(refusals(drawn('area', [CORNERS[0]!, CORNERS[0]!, CORNERS[1]!]))).toEqual([
    'This area has 2 of the 3 corners that it needs: click 1 more.',
  ])
  expect(refusals(drawn('line', [CORNERS[0]!, CORNERS[0]!]))).toHaveLength(1)
})

test('the corner where an area closes moves as one', () => {
  const plan = mended(drawn('area'))
  const moved: Position = [9.99, 50]
  const ring = [moved, CORNERS[1], CORNERS[2], moved]
  expect(coordinates(moveHazardVertex(plan, id, 0, moved))).toEqual([ring])
  expect(coordinates(moveHazardVertex(plan, id, 3, moved))).toEqual([ring])
  expect(moveHazardVertex(plan, id, 0, CORNERS[0]!)).toBe(plan)
  expect(moveHazardVertex(plan, id, 9, moved)).toBe(plan)
})

test('a hazard is renamed, changed in kind and removed', () => {
  const plan = mended(drawn('line'))
  expect(renameHazard(plan, id, 'Burn').hazards.get(id)?.name).toBe('Burn')
  expect(setHazardKind(plan, id, 'railway').hazards.get(id)?.hazard).toBe('railway')
  expect(removeHazard(plan, id)).toEqual(EMPTY_PLAN)
  expect(renameHazard(plan, id, 'Tarn')).toBe(plan)
  expect(setHazardKind(plan, id, 'water')).toBe(plan)
})

test('a corner goes, and an area stays closed, down to the least that a line or an area can be', () => {
  const fourth: Position = [10, 50.01]
  const square = mended(drawn('area', [...CORNERS, fourth]))
  expect(coordinates(removeHazardVertex(square, id, 0))).toEqual([
    [CORNERS[1], CORNERS[2], fourth, CORNERS[1]],
  ])
  expect(removeHazardVertex(square, id, 4)).toEqual(removeHazardVertex(square, id, 0))
  const triangle = mended(drawn('area'))
  expect(removeHazardVertex(triangle, id, 1)).toBe(triangle)

  const line = removeHazardVertex(mended(drawn('line')), id, 1)
  expect(coordinates(line)).toEqual([CORNERS[0], CORNERS[2]])
  expect(removeHazardVertex(line, id, 0)).toBe(line)
})
