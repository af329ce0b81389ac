import { describe, expect, test } from 'vitest'
import { parseHazardFeatures } from '../../src/files/parse-hazard-features'
import { hazardsFrom, likelyKind, tellingProperties } from '../../src/hazard/hazard-features'
import { addHazards } from '../../src/plan/hazard-edits'
import type { HazardId } from '../../src/plan/id'
import { EMPTY_PLAN, type HazardKind } from '../../src/plan/plan'

const feature = (geometry: unknown, properties: unknown = {}) => ({ type: 'Feature', geometry, properties })
const file = (...features: unknown[]) => JSON.stringify({ type: 'FeatureCollection', features })
const WAY = { type: 'LineString', coordinates: [[11, 47], [11.1, 47.1, 900]] } // biome-ignore format: one line
const RING = [[11, 47], [11.1, 47], [11, 47.1], [11, 47]] // biome-ignore format: one line

function read(text: string) {
  const result = parseHazardFeatures(text)
  if (!result.ok) throw new Error(result.problems[0]?.message)
  return result.value
}
const faults = (text: string) => {
  const result = parseHazardFeatures(text)
  return result.ok ? [] : result.problems.map(({ code, at }) => `${code} ${at}`)
}

describe('a file of roads and waters', () => {
  test('gives each line and area of every geometry that RFC 7946 knows, and counts what can be no hazard', () => {
    const { features, leftOut } = read(
      file(
        feature(WAY),
        feature({ type: 'Polygon', coordinates: [RING] }),
        feature({ type: 'MultiLineString', coordinates: [WAY.coordinates, WAY.coordinates] }),
        feature({ type: 'MultiPolygon', coordinates: [[RING]] }),
        feature({ type: 'GeometryCollection', geometries: [WAY, { type: 'Point', coordinates: [11, 47] }] }),
        feature({ type: 'Point', coordinates: [11, 47] }),
        feature(null),
      ),
    )
    expect(features.map(({ geometry }) => geometry.type).join(' ')).toBe(
      'LineString Polygon LineString LineString Polygon LineString',
    )
    expect(leftOut).toBe(2)
  })

  test('becomes the hazards that a person says, with their names, as one edit', () => {
    const source = read(
      file(
        feature(WAY, { class: 'secondary', name: 'Moor road' }),
        feature(WAY, { class: 'canal' }),
        feature(WAY, { class: 'hedge', name: 'Old hedge' }),
      ),
    )
    let last = 0
    const kinds = new Map<string, HazardKind>([
      ['secondary', 'road'],
      ['canal', 'water'],
    ])
    const hazards = hazardsFrom(
      source,
      { properties: ['class'], kindOf: (_, value) => kinds.get(value), nameProperty: 'name' },
      () => `h${++last}` as HazardId,
    )
    const plan = addHazards(EMPTY_PLAN, hazards)
    expect([...plan.hazards.values()].map(({ hazard, name }) => [hazard, name])).toEqual([
      ['road', 'Moor road'],
      ['water', ''],
    ])
  })

  test('is told apart by the property `hazard`, or by those that are named after kinds or hold their words', () => {
    const telling = (...properties: object[]) =>
      tellingProperties(read(file(...properties.map((each) => feature(WAY, each))))).map(({ name }) => name)
    expect(telling({ layer: 'x', highway: 'steps' }, { layer: 'y', waterway: 'weir' })).toEqual([
      'highway',
      'waterway',
    ])
    expect(telling({ class: 'secondary', name: 'Road of stone' }, { class: 'hedge' })).toEqual(['class'])
    expect(telling({ highway: 'track', hazard: 'water' })).toEqual(['hazard'])
    expect([
      likelyKind('class', 'power-line'),
      likelyKind('class', 'Railway'),
      likelyKind('highway', 'footway'),
      likelyKind('highway', 'steps'),
      likelyKind('class', 'hedge'),
    ]).toEqual(['power-line', 'railway', 'track', 'road', undefined])
  })

  test('may be of one kind all of it', () => {
    const source = read(file(feature(WAY), feature(WAY)))
    let last = 0
    const mapping = { properties: [], kindOf: () => undefined, ofAll: 'railway' as const }
    const hazards = hazardsFrom(source, mapping, () => `h${++last}` as HazardId)
    expect(hazards.map(({ hazard }) => hazard)).toEqual(['railway', 'railway'])
  })

  test('with a fault is refused whole, each fault with its place', () => {
    expect(
      faults(
        file(
          feature({ type: 'LineString', coordinates: [[11, 47]] }),
          feature({ type: 'LineString', coordinates: [[500_000, 5_200_000], [11, 47]] }), // biome-ignore format: one line
          feature({ type: 'Polygon', coordinates: [RING.slice(0, 3).concat([[12, 48]])] }),
        ),
      ),
    ).toEqual([
      'wrong-count features[0].geometry.coordinates',
      'off-globe features[1].geometry.coordinates[0]',
      'open-ring features[2].geometry.coordinates[0][3]',
    ])
    expect(faults('{"type":"FeatureCollection"}')).toEqual(['no-features features'])
    expect(faults(file(feature(null)))).toEqual(['no-hazards features'])
    expect(faults('[')).toHaveLength(1)
    const projected = { ...JSON.parse(file(feature(WAY))), crs: { properties: { name: 'EPSG:3857' } } }
    expect(faults(JSON.stringify(projected))).toEqual(['other-system crs'])
  })
})
