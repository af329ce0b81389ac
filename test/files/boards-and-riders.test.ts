import { describe, expect, test } from 'vitest'
import { formatPlan } from '../../src/files/format-plan'
import { parsePlan } from '../../src/files/parse-plan'
import type { CircuitId } from '../../src/plan/id'

// biome-ignore lint/suspicious/noExplicitAny: a plan file as JSON, deliberately outside the program's own types
type File = any

const wire = {
  id: 'w',
  loopOhmPerKm: 130,
  tempCoeffPerC: 0.0039,
  nanoFPerKm: 50,
  loopMilliHPerKm: 1,
  dryMicroSPerKm: 0.5,
  wetMicroSPerKm: 50,
  kgPerKm: 13,
  phantomNanoFPerKm: 80,
}
const board = {
  id: 'b',
  kind: 'board',
  ports: 4,
  drop: { ohms: 600, henries: 5, minVolts: 12 },
  generator: { volts: 90, hz: 20, ohms: 400 },
  insertionDb: 1,
}

/** Two stations, a line with two pairs, two circuits on them and one that rides. */
function file(rider: object, others: object = {}): File {
  const station = (id: string, lon: number) => ({
    type: 'Feature',
    id,
    geometry: { type: 'Point', coordinates: [lon, 47] },
    properties: { kind: 'station' },
  })
  const circuit = (id: string, more: object) => ({
    id,
    lines: ['l'],
    sets: { a: 'crank-1600', b: 'crank-1600' },
    ...more,
  })
  return {
    type: 'FeatureCollection',
    plan: {
      format: 'fieldpair-plan',
      version: 1,
      allowances: { coil: { voiceDb: 0.3, ringDb: 0.8 } },
      catalog: { wires: [wire], supplies: [board] },
      circuits: [circuit('one', others), circuit('two', {}), circuit('rider', rider)],
    },
    features: [
      station('a', 11),
      station('b', 11.02),
      {
        type: 'Feature',
        id: 'l',
        geometry: {
          type: 'LineString',
          coordinates: [
            [11, 47],
            [11.02, 47],
          ],
        },
        properties: { kind: 'line', from: 'a', to: 'b', wire: 'w', pairs: 2, legs: [{ lay: 'surface' }] },
      },
    ],
  }
}
const faultsOf = (plan: File) => {
  const read = parsePlan(JSON.stringify(plan))
  return read.ok ? [] : read.problems.map(({ code, at }) => `${at} ${code}`)
}
const simplex = { over: 'simplex', electrodeOhms: { a: 80, b: 120 } }

test('a board, a phantom, a simplex and their coils are read, and written as they were', () => {
  for (const rider of [{ over: 'phantom' }, simplex]) {
    const wanted = file(rider, { supply: { type: 'b', at: 'a' } })
    const read = parsePlan(JSON.stringify(wanted))
    if (!read.ok) throw new Error(JSON.stringify(read.problems))
    expect(read.value.circuits.get('rider' as CircuitId)).toMatchObject(rider)
    const written = JSON.parse(formatPlan(read.value))
    expect(written.plan.circuits).toMatchObject(wanted.plan.circuits)
    expect(written.plan.allowances.coil).toEqual(wanted.plan.allowances.coil)
    expect(written.plan.catalog.wires[0]).toMatchObject(wire)
    expect(written.plan.catalog.supplies[0]).toMatchObject(board)
    const again = parsePlan(JSON.stringify(written))
    expect(again.ok && formatPlan(again.value)).toBe(formatPlan(read.value))
  }
})
test('a pair of its own may be said, and a coil in part', () => {
  const said = file({ over: 'pair', lines: ['l'] })
  said.features[2].properties.pairs = 3
  said.plan.allowances.coil = { voiceDb: 0.2 }
  const read = parsePlan(JSON.stringify(said))
  expect(read.ok && read.value.allowances.coil).toEqual({ voiceDb: 0.2, ringDb: 1 })
  expect(read.ok && read.value.circuits.get('rider' as CircuitId)).not.toHaveProperty('over')
})

describe('is refused with its place', () => {
  const change = (rider: object, edit: (plan: File) => void = () => {}, others: object = {}) => {
    const plan = file(rider, others)
    edit(plan)
    return faultsOf(plan)
  }
  test.each(['feed-48', 'nine-volt', 'ringdown-48', 'x'])('%s on a circuit that is ridden', (type) => {
    const known = (plan: File) => {
      plan.plan.catalog.supplies.push({ id: 'x', kind: 'exchange', volts: 48, ohms: 400 })
      plan.plan.catalog.supplies.push({ id: 'nine-volt', kind: 'series', volts: 9, ohms: 2 })
    }
    const supply = { supply: { type, at: 'a' } }
    expect(change({ over: 'phantom' }, known, supply)).toEqual(['plan.circuits[0].supply dc-through-coil'])
    expect(change({ ...simplex, ...supply }, known)).toEqual(['plan.circuits[2].supply dc-through-coil'])
    // The simplex rides on the first circuit alone: the second may have its supply.
    const second = (plan: File) => {
      known(plan)
      plan.plan.circuits[1].supply = supply.supply
    }
    expect(change(simplex, second)).toEqual([])
    expect(change({ over: 'phantom' }, second)).toEqual(['plan.circuits[1].supply dc-through-coil'])
  })
  test('a phantom over one pair', () => {
    const one = (plan: File) => {
      plan.features[2].properties.pairs = 1
      plan.plan.circuits.splice(1, 1)
    }
    expect(change({ over: 'phantom' }, one)).toEqual(['plan.circuits[1].lines[0] too-few-pairs'])
    expect(change(simplex, one)).toEqual([])
  })
  test('a second rider on pairs that are taken', () => {
    const two = (plan: File) => plan.plan.circuits.push({ ...plan.plan.circuits[2], id: 'again' })
    expect(change({ over: 'phantom' }, two)).toEqual(['plan.circuits[3].lines[0] too-few-pairs'])
    expect(change(simplex, two)).toEqual([])
  })
  test('a rider on a line that returns through the earth', () => {
    const earth = (plan: File) =>
      Object.assign(plan.features[2].properties, { return: 'earth', electrodeOhms: [9, 9] })
    expect(change({ over: 'phantom' }, earth)).toEqual(['plan.circuits[2].lines[0] earth-under-rider'])
  })
  test('a simplex without its electrodes, or with one of no sense', () => {
    expect(change({ over: 'simplex' })).toEqual(['plan.circuits[2].electrodeOhms missing'])
    expect(change({ over: 'simplex', electrodeOhms: { a: 80 } })).toEqual([
      'plan.circuits[2].electrodeOhms missing',
    ])
    expect(change({ over: 'simplex', electrodeOhms: { a: 80, b: -1 } })).toEqual([
      'plan.circuits[2].electrodeOhms.b out-of-range',
    ])
    expect(change({ over: 'simplex', electrodeOhms: { a: 80, b: 1, c: 2 } })).toEqual([
      'plan.circuits[2].electrodeOhms.c unknown-station',
    ])
  })
  test('an unknown way to lie, a drop or a coil of no sense, an exchange without its source', () => {
    expect(change({ over: 'triplex' })).toContain('plan.circuits[2].over unknown-word')
    const wrong = (plan: File) => {
      plan.plan.catalog.supplies[0] = { ...board, drop: { ohms: -600, minVolts: 12 }, ports: 2.5 }
      plan.plan.catalog.supplies.push({ id: 'x', kind: 'exchange', ports: 8 })
      plan.plan.allowances.coil.voiceDb = -1
    }
    expect(change({ over: 'phantom' }, wrong)).toEqual(
      expect.arrayContaining([
        'plan.allowances.coil.voiceDb out-of-range',
        'plan.catalog.supplies[0].ports out-of-range',
        'plan.catalog.supplies[0].drop.ohms out-of-range',
        'plan.catalog.supplies[1].volts missing',
        'plan.catalog.supplies[1].ohms missing',
      ]),
    )
  })
})
