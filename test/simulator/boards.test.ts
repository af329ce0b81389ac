import { beforeAll, describe, expect, test } from 'vitest'
import { parsePlan } from '../../src/files/parse-plan'
import { reportPlan } from '../../src/report/report-plan'
import { todaysCases } from '../cases'
import { bells, type Circuit, circuitOf, ladder } from './netlist'
import { randomBoard } from './random-board'
import type { PlanFile } from './random-plan'
import { simulator } from './volts-at'

// Reference: ngspice, as the package eecircuit-engine carries it. Tolerance 0.1 %: what is promised to users.
const TOLERANCE = 1e-3
const BOARDS = todaysCases(5, 5)
const BOARD = 's0'

let volts: Awaited<ReturnType<typeof simulator>>
beforeAll(async () => {
  volts = await simulator()
})

/** The port of each station, found anew: what hangs together once the board's station is taken away. */
function portsOf(circuit: Circuit): ReadonlyMap<string, string> {
  const portOf = new Map(circuit.stations.map((id) => [id, id]))
  for (let changed = true; changed; ) {
    changed = false
    for (const { from, to } of circuit.lines) {
      const [a, b] = [portOf.get(from)!, portOf.get(to)!]
      if (from === BOARD || to === BOARD || a === b) continue
      const [least, other] = a < b ? [a, b] : [b, a]
      for (const [id, port] of portOf) if (port === other) portOf.set(id, least)
      changed = true
    }
  }
  return portOf
}

/** What of the circuit hangs on some ports, with the board's station. */
function onPorts(circuit: Circuit, portOf: ReadonlyMap<string, string>, wanted: readonly string[]): Circuit {
  const isOn = (id: string) => wanted.includes(portOf.get(id)!)
  return {
    stations: circuit.stations,
    lines: circuit.lines.filter(({ from, to }) => isOn(from === BOARD ? to : from)),
    sets: Object.fromEntries(Object.entries(circuit.sets).filter(([id]) => isOn(id))),
  }
}

const near = (what: string, ours: number, theirs: number) =>
  expect(
    Math.abs(ours - theirs) / Math.max(Math.abs(theirs), 1e-9),
    `${what}: ${ours} against ${theirs}`,
  ).toBeLessThan(TOLERANCE)

/** R, L and C of a drop in series across the line. */
const dropCards = ({ ohms, henries, microF }: PlanFile) => [
  `Rdrop ${BOARD} dropl ${ohms}`,
  henries ? `Ldrop dropl dropc ${henries}` : 'Rdropl dropl dropc 1e-9',
  microF ? `Cdrop dropc 0 ${microF * 1e-6}` : 'Rdropc dropc 0 1e-9',
]

describe.each(['board', 'exchange'] as const)('a random %s', (kind) => {
  const boards = BOARDS.map((k) => {
    const file = randomBoard(8000 + 100 * ['board', 'exchange'].indexOf(kind) + k, kind)
    const read = parsePlan(JSON.stringify(file))
    if (!read.ok) throw new Error(JSON.stringify(read.problems))
    const report = reportPlan(read.value)
    const circuit = circuitOf(file, Object.fromEntries(report.lines.map(({ id, wireM }) => [id, wireM])))
    const supply = file.plan.catalog.supplies[0]
    return { file, figures: report.circuits[0]!, circuit, supply, portOf: portsOf(circuit) }
  })

  test('has every through call, and every call on a party line, as the simulator has it', async () => {
    let between = 0
    for (const { file, figures, circuit, supply, portOf } of boards) {
      const ids = Object.keys(circuit.sets)
      expect(figures.voice).toHaveLength(ids.length * (ids.length - 1))
      for (const { from, to, lossDb } of figures.voice) {
        if (from > to) continue
        const [a, b] = [portOf.get(from)!, portOf.get(to)!]
        const own = onPorts(circuit, portOf, [a, b])
        const [za, zb] = [circuit.sets[from].offHook.acOhms, circuit.sets[to].offHook.acOhms]
        const cards = [
          ...ladder(own, 1000),
          ...bells(own, [from, to], 1000),
          'Va va 0 dc 0 ac 1',
          `Ra va ${from} ${za}`,
          `Rb ${to} 0 ${zb}`,
        ]
        const [v] = await volts(cards, [to], 1000)
        const wireDb = 20 * Math.log10(zb / (za + zb) / v!)
        if (a !== b) between++
        // A loss is held as the ratio of voltages that it stands for.
        near(
          `${file.plan.title} voice`,
          10 ** (-lossDb / 20),
          10 ** (-(wireDb + (a === b ? 0 : supply.insertionDb)) / 20),
        )
      }
    }
    expect(between).toBeGreaterThanOrEqual(4 * BOARDS.length)
  }, 300_000)

  test('rings every bell and every drop as the simulator has it', async () => {
    let [drops, out] = [0, 0]
    for (const { file, figures, circuit, supply, portOf } of boards) {
      const wanted = new Set<string>()
      for (const [id, set] of Object.entries(circuit.sets)) {
        if (id === BOARD && kind === 'board') continue
        const port = portOf.get(id)!
        const own = Object.entries(circuit.sets).filter(
          ([other]) => portOf.get(other) === port && circuit.sets[other].ringer,
        )
        if (set.ringer) wanted.add(`${BOARD} ${id}`)
        if (!set.generator) continue
        for (const [other] of own) if (other !== id) wanted.add(`${id} ${other}`)
        if (kind === 'board') wanted.add(`${id} ${BOARD}`)
      }
      const found = figures.ringing.map(({ from, to }) => `${from} ${to}`)
      expect(new Set(found)).toEqual(wanted)
      for (const { from, to, volts: ours } of figures.ringing) {
        const fromBoard = from === BOARD
        const port = portOf.get(fromBoard ? to : from)!
        const own = onPorts(circuit, portOf, [port])
        const generator = fromBoard ? (supply.generator ?? supply.ring) : circuit.sets[from].generator
        const cards = [
          ...ladder(own, generator.hz),
          ...bells(own, fromBoard ? [] : [from], generator.hz),
          ...(kind === 'board' && !fromBoard ? dropCards(supply.drop) : []),
          `Vg vg 0 dc 0 ac ${generator.volts}`,
          `Rg vg ${from} ${generator.ohms}`,
        ]
        const [theirs] = await volts(cards, [to], generator.hz)
        if (to === BOARD) drops++
        if (fromBoard) out++
        near(`${file.plan.title} ringing ${from} → ${to}`, ours, theirs!)
      }
    }
    expect(out).toBeGreaterThanOrEqual(BOARDS.length)
    if (kind === 'board') expect(drops).toBeGreaterThanOrEqual(BOARDS.length)
  }, 300_000)

  test('feeds each port by itself', async () => {
    for (const { file, figures, circuit, supply, portOf } of boards) {
      if (kind === 'board') {
        expect(figures.loop).toEqual([])
        continue
      }
      for (const { call, station, mA } of figures.loop) {
        const port = portOf.get(station)!
        const lifted = call.filter((id) => portOf.get(id) === port)
        const own = onPorts(circuit, portOf, [port])
        const most = supply.maxMA === undefined ? 1e3 : supply.maxMA / 1000
        const cards = [
          ...ladder(own, 0),
          ...bells(own, lifted, 0),
          ...lifted.map((id) => `Rs_${id} ${id} 0 ${circuit.sets[id].offHook.dcOhms}`),
          `Bsupply 0 ${BOARD} I = min((${supply.volts} - V(${BOARD}))/${supply.ohms}, ${most})`,
        ]
        const [v] = await volts(cards, [station], 0)
        near(`${file.plan.title} loop`, mA, (1000 * v!) / circuit.sets[station].offHook.dcOhms)
      }
    }
  }, 300_000)
})
