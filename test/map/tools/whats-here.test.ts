import { describe, expect, test } from 'vitest'
import { distanceFromStretch, type Scene, stationHere, whatsHere } from '../../../src/map/tools/whats-here'
import type { HazardId, LineId, StationId } from '../../../src/plan/id'

//   A ───── bend ───── B
//            ·
//      road ═══════
const SCENE: Scene = {
  stations: [
    { id: 'a' as StationId, at: { x: 0, y: 0 } },
    { id: 'b' as StationId, at: { x: 200, y: 0 } },
  ],
  lines: [
    {
      id: 'l' as LineId,
      path: [
        { x: 0, y: 0 },
        { x: 100, y: 0 },
        { x: 200, y: 0 },
      ],
    },
  ],
  hazards: [
    {
      id: 'h' as HazardId,
      path: [
        { x: 50, y: 60 },
        { x: 150, y: 60 },
      ],
    },
  ],
}

describe('what a hand takes hold of', () => {
  test('a station, anywhere on its block', () => {
    expect(whatsHere(SCENE, { x: 12, y: 8 }, 4)).toEqual({ kind: 'station', id: 'a' })
  })
  test('a station before the wire that ends on it', () => {
    expect(whatsHere(SCENE, { x: 16, y: 0 }, 4)).toEqual({ kind: 'station', id: 'a' })
  })
  test('a bend before its legs', () => {
    expect(whatsHere(SCENE, { x: 103, y: 2 }, 6)).toEqual({ kind: 'bend', line: 'l', index: 0 })
  })
  test('the leg that is nearest', () => {
    expect(whatsHere(SCENE, { x: 150, y: 3 }, 6)).toEqual({ kind: 'leg', line: 'l', leg: 1 })
  })
  test('a hazard by its corner, then by its side', () => {
    expect(whatsHere(SCENE, { x: 52, y: 62 }, 6)).toEqual({ kind: 'corner', hazard: 'h', index: 0 })
    expect(whatsHere(SCENE, { x: 100, y: 63 }, 6)).toEqual({ kind: 'hazard', id: 'h' })
  })
  test('nothing on open ground', () => {
    expect(whatsHere(SCENE, { x: 100, y: 30 }, 6)).toBeNull()
  })
  test('a finger reaches farther than a mouse', () => {
    expect(stationHere(SCENE, { x: 0, y: 28 }, 8)).toBeUndefined()
    expect(stationHere(SCENE, { x: 0, y: 28 }, 22)).toBe('a')
  })
})

test('the distance from a stretch is measured to its end where the foot falls beyond', () => {
  expect(distanceFromStretch({ x: -3, y: 4 }, { x: 0, y: 0 }, { x: 10, y: 0 })).toBe(5)
  expect(distanceFromStretch({ x: 5, y: 4 }, { x: 0, y: 0 }, { x: 10, y: 0 })).toBe(4)
  expect(distanceFromStretch({ x: 3, y: 4 }, { x: 0, y: 0 }, { x: 0, y: 0 })).toBe(5)
})
