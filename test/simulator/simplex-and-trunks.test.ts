import { beforeAll, describe, expect, test } from 'vitest'
import { seeded } from '../../src/budget/seeded'
import { BUILT_IN } from '../../src/catalog/built-in'
import { mergeCatalogs } from '../../src/catalog/catalog'
import { parsePlan } from '../../src/files/parse-plan'
import { measurePlan } from '../../src/measure/measure-line'
import { reportPlan } from '../../src/report/report-plan'
import { trunksOfNet } from '../../src/report/trunks-of-net'
import { todaysCases } from '../cases'
import { bells, type Circuit, circuitOf, ladder } from './netlist'
import type { PlanFile } from './random-plan'
import { simulator } from './volts-at'

// Reference: ngspice, as the package eecircuit-engine carries it. Tolerance 0.1 %: what is promised to users.
const TOLERANCE = 1e-3

let volts: Awaited<ReturnType<typeof simulator>>
beforeAll(async () => {
  volts = await simulator()
})

const near = (what: string, ours: number, theirs: number) =>
  expect(Math.abs(ours / theirs - 1), `${what}: ${ours} against ${theirs}`).toBeLessThan(TOLERANCE)
const ratio = (lossDb: number) => 10 ** (-lossDb / 20)

/** A seeded plan file: places, lines between them, and circuits over these. */
function drawn(
  seed: number,
  joined: readonly (readonly [string, string])[],
  circuitsOf: (electrode: () => number) => readonly object[],
): PlanFile {
  const random = seeded(seed)
  const between = (low: number, high: number) => low + random() * (high - low)
  const ids = [...new Set(joined.flat())]
  const places = new Map(ids.map((id) => [id, [11 + between(-0.06, 0.06), 47 + between(-0.04, 0.04)]]))
  const bell = (least: number) => ({
    ohms: between(500, 4000),
    henries: between(1, 40),
    microF: between(0.3, 8),
    minVolts: least,
  })
  const board = (id: string) => ({
    id,
    kind: 'board',
    drop: bell(4),
    generator: { volts: between(60, 100), hz: 20, ohms: between(200, 900) },
    insertionDb: between(0.2, 2),
  })
  return {
    type: 'FeatureCollection',
    plan: {
      format: 'fieldpair-plan',
      version: 1,
      weather: random() < 0.5 ? 'wet' : 'dry',
      wireTempC: between(-20, 50),
      allowances: { coil: { voiceDb: 0.6, ringDb: 1.2 } },
      catalog: {
        wires: [
          {
            ...{ id: 'w', loopOhmPerKm: between(20, 250), tempCoeffPerC: 0.004, nanoFPerKm: between(5, 120) },
            ...{ loopMilliHPerKm: between(0.3, 2), dryMicroSPerKm: between(0.05, 2) },
            ...{ wetMicroSPerKm: between(5, 150), kgPerKm: 10 },
          },
        ],
        sets: [
          {
            ...{ id: 't', talk: 'local', offHook: { dcOhms: 100, acOhms: between(200, 1200), minMA: 0 } },
            ...{ ringer: bell(8), maxLossDb: 30 },
            generator: { volts: between(60, 100), hz: 20, ohms: between(200, 900) },
          },
        ],
        supplies: [board('p'), board('q')],
      },
      circuits: circuitsOf(() => between(10, 400)),
    },
    features: [
      ...ids.map((id) => ({
        type: 'Feature',
        id,
        geometry: { type: 'Point', coordinates: places.get(id) },
        properties: { kind: 'station', name: id },
      })),
      ...joined.map(([a, b]) => ({
        type: 'Feature',
        id: `${a}${b}`,
        geometry: { type: 'LineString', coordinates: [places.get(a), places.get(b)] },
        properties: { kind: 'line', from: a, to: b, wire: 'w', legs: [{ lay: 'surface' }] },
      })),
    ],
  }
}

function read(file: PlanFile) {
  const result = parsePlan(JSON.stringify(file))
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  const plan = result.value
  const report = reportPlan(plan)
  const wireM = Object.fromEntries(report.lines.map((line) => [line.id, line.wireM]))
  return { plan, report, wireM }
}

describe('a simplex', () => {
  const files = todaysCases(4, 4).map((k) =>
    drawn(
      100 + k,
      [
        ['a', 'b'],
        ['b', 'c'],
        ['b', 'd'],
      ],
      (electrode) => [
        { id: 'under', lines: ['ab', 'bc', 'bd'], sets: { a: 't', c: 't', d: 't' } },
        {
          id: 'over',
          lines: ['ab', 'bc', 'bd'],
          sets: { a: 't', c: 't', d: 't' },
          over: 'simplex',
          electrodeOhms: { a: electrode(), c: electrode(), d: electrode() },
        },
      ],
    ),
  )

  test('rings and speaks over both wires of a pair, the earth, and a rod at each set, as the simulator has it', async () => {
    for (const file of files) {
      const { report, wireM } = read(file)
      const figures = report.circuits[1]!
      const { electrodeOhms, sets } = file.plan.circuits[1]
      const pair = circuitOf(file, wireM)
      // A telephone stands at a node of its own, behind its rod.
      const behind = (id: string) => `rod_${id}`
      const own: Circuit = {
        stations: pair.stations,
        lines: pair.lines.map((line) => ({ ...line, ohm: line.ohm / 4 })),
        sets: Object.fromEntries(Object.keys(sets).map((id) => [behind(id), pair.sets[id]])),
      }
      const rods = Object.entries(electrodeOhms).map(([id, ohms]) => `Rrod_${id} ${id} ${behind(id)} ${ohms}`)
      expect(figures.voice).toHaveLength(6)
      for (const { from, to, lossDb } of figures.voice) {
        const ohms = pair.sets[from].offHook.acOhms
        const cards = [
          ...ladder(own, 1000),
          ...rods,
          ...bells(own, [behind(from), behind(to)], 1000),
          'Va va 0 dc 0 ac 1',
          `Ra va ${behind(from)} ${ohms}`,
          `Rb ${behind(to)} 0 ${ohms}`,
        ]
        const [v] = await volts(cards, [behind(to)], 1000)
        near(`voice ${from} → ${to}`, ratio(lossDb), 2 * v! * ratio(2 * 0.6))
      }
      expect(figures.ringing).toHaveLength(6)
      for (const { from, to, volts: ours } of figures.ringing) {
        const { generator } = pair.sets[from]
        const cards = [
          ...ladder(own, generator.hz),
          ...rods,
          ...bells(own, [behind(from)], generator.hz),
          `Vg vg 0 dc 0 ac ${generator.volts}`,
          `Rg vg ${behind(from)} ${generator.ohms}`,
        ]
        const [theirs] = await volts(cards, [behind(to)], generator.hz)
        near(`ringing ${from} → ${to}`, ours, theirs! * ratio(2 * 1.2))
      }
    }
  }, 120_000)
})

describe('a trunk between two boards', () => {
  /** `n` and `f` are boards; `c` and `d` share a line of the far one. */
  const files = todaysCases(4, 4).map((k) =>
    drawn(
      200 + k,
      [
        ['n', 'a'],
        ['n', 'b'],
        ['n', 'f'],
        ['f', 'c'],
        ['c', 'd'],
        ['f', 'e'],
      ],
      () => [
        { id: 'near', lines: ['na', 'nb', 'nf'], sets: { a: 't', b: 't' }, supply: { type: 'p', at: 'n' } },
        {
          id: 'far',
          lines: ['fc', 'cd', 'fe'],
          sets: { c: 't', d: 't', e: 't' },
          supply: { type: 'q', at: 'f' },
        },
      ],
    ),
  )

  test('joins two ports over itself, and rings the drop at its other end, as the simulator has it', async () => {
    for (const file of files) {
      const { plan, wireM } = read(file)
      const [trunk] = trunksOfNet(plan, mergeCatalogs(BUILT_IN, plan.catalog), measurePlan(plan))
      const all = circuitOf(
        { ...file, plan: { ...file.plan, circuits: [{ lines: Object.keys(wireM), sets: allSets(file) }] } },
        wireM,
      )
      /** What hangs on the ports of these telephones, and the trunk. */
      const joined = (ends: readonly string[]): Circuit => {
        const ports = { a: ['na'], b: ['nb'], c: ['fc', 'cd'], d: ['fc', 'cd'], e: ['fe'] } as const
        const lines = new Set(['nf', ...ends.flatMap((end) => ports[end as keyof typeof ports])])
        const own = all.lines.filter(({ from, to }) => lines.has(`${from}${to}`))
        const there = new Set(own.flatMap(({ from, to }) => [from, to]))
        const sets = Object.fromEntries(Object.entries(all.sets).filter(([id]) => there.has(id)))
        return { stations: [...there], lines: own, sets }
      }
      const [p, q] = file.plan.catalog.supplies
      expect(trunk!.calls).toHaveLength(6)
      for (const { from, to, lossDb } of trunk!.calls) {
        const own = joined([from, to])
        const ohms = own.sets[from].offHook.acOhms
        const cards = [
          ...ladder(own, 1000),
          ...bells(own, [from, to], 1000),
          'Va va 0 dc 0 ac 1',
          `Ra va ${from} ${ohms}`,
          `Rb ${to} 0 ${ohms}`,
        ]
        const [v] = await volts(cards, [to], 1000)
        near(`call ${from} → ${to}`, ratio(lossDb), 2 * v! * ratio(p.insertionDb + q.insertionDb))
      }
      expect(trunk!.ringing.map(({ from, to }) => `${from} ${to}`)).toEqual(['n f', 'f n'])
      for (const { from, to, volts: ours } of trunk!.ringing) {
        const [{ generator }, { drop }] = from === 'n' ? [p, q] : [q, p]
        const cards = [
          ...ladder(joined([]), generator.hz),
          `Rdrop ${to} dropl ${drop.ohms}`,
          `Ldrop dropl dropc ${drop.henries}`,
          `Cdrop dropc 0 ${drop.microF * 1e-6}`,
          `Vg vg 0 dc 0 ac ${generator.volts}`,
          `Rg vg ${from} ${generator.ohms}`,
        ]
        const [theirs] = await volts(cards, [to], generator.hz)
        near(`ringing ${from} → ${to}`, ours, theirs!)
      }
    }
  }, 120_000)
})

const allSets = (file: PlanFile) => Object.assign({}, ...file.plan.circuits.map(({ sets }: PlanFile) => sets))
