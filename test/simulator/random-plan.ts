/** Seeded random plan files: trees and rings, every kind of supply, wires and sets of invented figures. */

import { seeded } from '../../src/budget/seeded'

export const SUPPLY_KINDS = ['none', 'feed', 'series', 'ringdown'] as const
export type SupplyKind = (typeof SUPPLY_KINDS)[number]

// biome-ignore lint/suspicious/noExplicitAny: a plan file as JSON, deliberately outside the program's own types
export type PlanFile = any

/** @param shape `tree`, or `ring`: a tree with one or two lines more. */
export function randomPlan(seed: number, kind: SupplyKind, shape: 'tree' | 'ring'): PlanFile {
  const random = seeded(seed)
  const between = (low: number, high: number) => low + random() * (high - low)
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!
  const chance = (p: number) => random() < p

  const wires = [0, 1, 2].map((k) => ({
    id: `w${k}`,
    name: `Wire ${k}`,
    loopOhmPerKm: between(20, 250),
    tempCoeffPerC: between(0.003, 0.005),
    nanoFPerKm: between(5, 120),
    loopMilliHPerKm: between(0.3, 2),
    dryMicroSPerKm: between(0.05, 2),
    wetMicroSPerKm: between(5, 150),
    kgPerKm: between(2, 40),
    breakN: 800,
    spoolsM: [400, 1600],
    source: 'invented',
  }))
  const sets = [0, 1, 2].map((k) => ({
    id: `t${k}`,
    name: `Set ${k}`,
    talk: kind === 'none' ? 'local' : 'common',
    offHook: { dcOhms: between(60, 600), acOhms: between(200, 1200), minMA: between(5, 20) },
    ...(chance(0.9) && {
      ringer: {
        ohms: between(500, 4000),
        ...(chance(0.7) && { henries: between(5, 40) }),
        ...(chance(0.6) && { microF: between(0.3, 8) }),
        minVolts: between(8, 40),
      },
    }),
    ...((kind === 'none' || chance(0.4)) && {
      generator: { volts: between(50, 100), hz: pick([16.7, 20, 25]), ohms: between(200, 900) },
    }),
    maxLossDb: between(10, 35),
    source: 'invented',
  }))
  const supplies =
    kind === 'none'
      ? []
      : [
          {
            id: 'p',
            name: 'Supply',
            kind,
            volts: between(6, 60),
            ohms: between(2, 500),
            ...(chance(0.35) && { maxMA: between(5, 40) }),
            ...(kind !== 'series' &&
              chance(0.8) && {
                ring: { volts: between(40, 100), hz: pick([20, 25]), ohms: between(100, 900) },
              }),
            ...(chance(0.4) && { indicator: { forwardVolts: between(0.5, 3), ohms: between(5, 200) } }),
            ...(kind === 'ringdown' && { insertionDb: between(0.2, 2) }),
            source: 'invented',
          },
        ]

  const count = 3 + Math.floor(random() * 5)
  const stations = Array.from({ length: count }, (_, k) => ({
    type: 'Feature',
    id: `s${k}`,
    geometry: { type: 'Point', coordinates: [11 + between(0, 0.12), 47 + between(0, 0.08)] },
    properties: { kind: 'station', name: `Station ${k}`, note: '' },
  }))
  const joined: [number, number][] = []
  for (let k = 1; k < count; k++) joined.push([Math.floor(random() * k), k])
  if (shape === 'ring') {
    for (let extra = 0; extra < 1 + Math.floor(random() * 2); extra++) {
      const a = Math.floor(random() * count)
      const b = (a + 1 + Math.floor(random() * (count - 1))) % count
      joined.push([a, b])
    }
  }
  const lines = joined.map(([a, b], k) => ({
    type: 'Feature',
    id: `l${k}`,
    geometry: {
      type: 'LineString',
      coordinates: [stations[a]!.geometry.coordinates, stations[b]!.geometry.coordinates],
    },
    properties: {
      kind: 'line',
      from: `s${a}`,
      to: `s${b}`,
      wire: pick(wires).id,
      pairs: 1,
      ...(chance(0.15)
        ? { return: 'earth', electrodeOhms: [between(10, 300), between(10, 300)] }
        : { return: 'pair' }),
      legs: [{ lay: pick(['surface', 'overhead', 'buried', 'water']) }],
    },
  }))
  const withSet = stations.filter(() => chance(0.7))
  const placed = withSet.length >= 2 ? withSet : stations.slice(0, 2)
  const at = kind === 'series' ? pick(placed) : pick(stations)
  return {
    type: 'FeatureCollection',
    plan: {
      format: 'fieldpair-plan',
      version: 1,
      title: `Random ${seed}`,
      weather: pick(['dry', 'wet']),
      wireTempC: between(-20, 50),
      catalog: { wires, sets, supplies },
      circuits: [
        {
          id: 'c1',
          name: 'Net',
          lines: lines.map(({ id }) => id),
          sets: Object.fromEntries(placed.map(({ id }) => [id, pick(sets).id])),
          supply: kind === 'none' ? null : { type: 'p', at: at.id },
        },
      ],
    },
    features: [...stations, ...lines],
  }
}
