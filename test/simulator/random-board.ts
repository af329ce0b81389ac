import { seeded } from '../../src/budget/seeded'
import type { PlanFile } from './random-plan'

/**
 * A seeded random plan file of a board or an exchange: 2 to 12 lines, some of them branched or closed to a ring, some party lines, some
 * with nobody on them, with or without a telephone at the board itself.
 */
export function randomBoard(seed: number, kind: 'board' | 'exchange'): PlanFile {
  const random = seeded(seed)
  const between = (low: number, high: number) => low + random() * (high - low)
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!
  const chance = (p: number) => random() < p
  const bell = (least: number) => ({
    ohms: between(300, 4000),
    ...(chance(0.7) && { henries: between(1, 40) }),
    ...(chance(0.5) && { microF: between(0.3, 8) }),
    minVolts: between(least, 30),
  })

  const wires = [0, 1].map((k) => ({
    id: `w${k}`,
    loopOhmPerKm: between(20, 250),
    tempCoeffPerC: between(0.003, 0.005),
    nanoFPerKm: between(5, 120),
    loopMilliHPerKm: between(0.3, 2),
    dryMicroSPerKm: between(0.05, 2),
    wetMicroSPerKm: between(5, 150),
    kgPerKm: between(2, 40),
    source: 'invented',
  }))
  const sets = [0, 1, 2].map((k) => ({
    id: `t${k}`,
    talk: kind === 'board' ? 'local' : 'common',
    offHook: { dcOhms: between(60, 600), acOhms: between(200, 1200), minMA: between(5, 20) },
    ...(chance(0.9) && { ringer: bell(8) }),
    ...((kind === 'board' || chance(0.3)) && {
      generator: { volts: between(50, 100), hz: pick([16.7, 20, 25]), ohms: between(200, 900) },
    }),
    maxLossDb: between(10, 35),
    source: 'invented',
  }))
  const supply =
    kind === 'board'
      ? {
          drop: bell(4),
          generator: { volts: between(50, 100), hz: pick([16.7, 20, 25]), ohms: between(200, 900) },
        }
      : {
          volts: between(20, 60),
          ohms: between(100, 500),
          ...(chance(0.3) && { maxMA: between(15, 40) }),
          ring: { volts: between(40, 100), hz: pick([20, 25]), ohms: between(100, 900) },
        }

  const ends = 2 + Math.floor(random() * 11)
  const places: [number, number][] = [[11, 47]]
  const joined: [number, number][] = []
  for (let line = 0; line < ends; line++) {
    const size = 1 + Math.floor(random() * 3)
    const first = places.length
    for (let k = 0; k < size; k++) {
      joined.push([k === 0 ? 0 : first + Math.floor(random() * k), places.length])
      places.push([11 + between(-0.06, 0.06), 47 + between(-0.04, 0.04)])
    }
    if (size > 1 && chance(0.3)) joined.push([0, first + size - 1])
  }
  const stations = places.map((coordinates, k) => ({
    type: 'Feature',
    id: `s${k}`,
    geometry: { type: 'Point', coordinates },
    properties: { kind: 'station', name: `Station ${k}` },
  }))
  const lines = joined.map(([a, b], k) => ({
    type: 'Feature',
    id: `l${k}`,
    geometry: { type: 'LineString', coordinates: [places[a], places[b]] },
    properties: {
      kind: 'line',
      from: `s${a}`,
      to: `s${b}`,
      wire: pick(wires).id,
      ...(chance(0.1) && { return: 'earth', electrodeOhms: [between(10, 300), between(10, 300)] }),
      legs: [{ lay: pick(['surface', 'overhead', 'buried', 'water']) }],
    },
  }))
  const placed = stations.filter((_, k) => chance(k === 0 ? 0.5 : 0.75))
  return {
    type: 'FeatureCollection',
    plan: {
      format: 'fieldpair-plan',
      version: 1,
      title: `Random ${kind} ${seed}`,
      weather: pick(['dry', 'wet']),
      wireTempC: between(-20, 50),
      catalog: {
        wires,
        sets,
        supplies: [{ id: 'p', kind, insertionDb: between(0.2, 2), ...supply, source: 'invented' }],
      },
      circuits: [
        {
          id: 'c1',
          lines: lines.map(({ id }) => id),
          sets: Object.fromEntries(placed.map(({ id }) => [id, pick(sets).id])),
          supply: { type: 'p', at: 's0' },
        },
      ],
    },
    features: [...stations, ...lines],
  }
}
