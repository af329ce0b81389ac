import { beforeAll, describe, expect, test } from 'vitest'
import { parsePlan } from '../../src/files/parse-plan'
import type { ReportCircuit } from '../../src/report/report'
import { reportPlan } from '../../src/report/report-plan'
import { todaysCases } from '../cases'
import { bells, type Circuit, circuitOf, ladder } from './netlist'
import { piece, portsOf } from './ports'
import { type PlanFile, randomPlan, SUPPLY_KINDS } from './random-plan'
import { simulator } from './volts-at'

// Reference: ngspice, as the package eecircuit-engine carries it. Tolerance 0.1 %: what is promised to users.
const TOLERANCE = 1e-3
const CIRCUITS_EACH = todaysCases(25, 9)

let worst = { what: 'nothing', difference: 0 }
let compared = 0
let voltsAt: Awaited<ReturnType<typeof simulator>>
beforeAll(async () => {
  voltsAt = await simulator()
})

async function volts(cards: readonly string[], node: string, hz: number): Promise<number> {
  const [there] = await voltsAt(cards, [node], hz)
  return there!
}

function compare(what: string, ours: number, theirs: number): void {
  const difference = Math.abs(ours - theirs) / Math.max(Math.abs(theirs), 1e-9)
  if (difference > worst.difference) worst = { what, difference }
  compared++
  expect(difference, `${what}: ${ours} against ${theirs}`).toBeLessThan(TOLERANCE)
}

/** DC source of the supply at a node; `through` ohms more stand in the same leg. */
function source(supply: PlanFile, node: string, through = 0): string[] {
  const left = Math.max(0, supply.volts - (supply.indicator?.forwardVolts ?? 0))
  const ohms = supply.ohms + (supply.indicator?.ohms ?? 0) + through
  return [`Vdc dcs 0 dc ${left}`, `Rdc dcs ${node} ${ohms}`]
}

/** Volts at some stations with sets off hook on a feed, first as a voltage source, then, where it must, at its limit. */
async function feedVolts(circuit: Circuit, supply: PlanFile, at: string, offHook: readonly string[]) {
  const loads = offHook.map((id) => `Rs_${id} ${id} 0 ${circuit.sets[id].offHook.dcOhms}`)
  const passive = [...ladder(circuit, 0), ...bells(circuit, offHook, 0), ...loads]
  const free = [...passive, ...source(supply, at)]
  const delivered = (await volts(free, 'dcs', 0)) - (await volts(free, at, 0))
  const amps = delivered / (supply.ohms + (supply.indicator?.ohms ?? 0))
  const limited = supply.maxMA !== undefined && amps > supply.maxMA / 1000
  const cards = limited ? [...passive, `Idc 0 ${at} ${supply.maxMA / 1000}`] : free
  const found: number[] = []
  for (const id of offHook) found.push(await volts(cards, id, 0))
  return found
}

async function checkVoice(file: PlanFile, circuit: Circuit, report: ReportCircuit): Promise<void> {
  const row = report.voice[Math.floor(report.voice.length / 2)]
  if (!row) return
  const za = circuit.sets[row.from].offHook.acOhms
  const zb = circuit.sets[row.to].offHook.acOhms
  const cards = [
    ...ladder(circuit, 1000),
    ...bells(circuit, [row.from, row.to], 1000),
    'Vs vs 0 dc 0 ac 1',
    `Ra vs ${row.from} ${za}`,
    `Rb ${row.to} 0 ${zb}`,
  ]
  const heard = await volts(cards, row.to, 1000)
  const supply = file.plan.catalog.supplies[0]
  const throughUnit =
    supply?.kind === 'ringdown' && onDifferentPorts(file, row.from, row.to) ? supply.insertionDb : 0
  compare(`${file.plan.title} voice`, 10 ** (-(row.lossDb - throughUnit) / 20), heard / (zb / (za + zb)))
}

/** Whether the unit's station lies on every way between two stations, or is one of them. */
function onDifferentPorts(file: PlanFile, a: string, b: string): boolean {
  const unit = file.plan.circuits[0].supply.at
  if (a === unit || b === unit) return true
  const lines = file.features.filter(({ properties }: PlanFile) => properties.kind === 'line')
  const cut = lines
    .map(({ properties }: PlanFile) => properties)
    .filter(({ from, to }: PlanFile) => from !== unit && to !== unit)
  return !piece({ stations: [], lines: cut, sets: { [b]: {} } }, a).sets[b]
}

async function checkRinging(file: PlanFile, circuit: Circuit, report: ReportCircuit): Promise<void> {
  const supply = file.plan.catalog.supplies[0]
  const at = file.plan.circuits[0].supply?.at
  for (const row of pickRows(report.ringing)) {
    // A ringdown unit's own set hangs on a port by itself: its crank reaches no bell.
    const cranked = supply?.kind !== 'ringdown' && isCrankRow(report, row, circuit)
    const fromSupply = row.from === at && supply?.ring && !cranked
    const ring = fromSupply ? supply.ring : circuit.sets[row.from].generator
    const own =
      supply?.kind === 'ringdown' ? portCircuit(file, circuit, row.to, row.from) : { circuit, at: row.from }
    const cards = [
      ...ladder(own.circuit, ring.hz),
      ...bells(own.circuit, fromSupply ? [] : [row.from], ring.hz),
      `Vs vs 0 dc 0 ac ${ring.volts}`,
      `Rs vs ${own.at} ${ring.ohms}`,
    ]
    compare(
      `${file.plan.title} ringing`,
      row.volts,
      await volts(cards, own.circuit.stations.includes(row.to) ? row.to : own.at, ring.hz),
    )
  }
}

/** A row from a station that has both a crank and the supply: cranks come first, one row for each other bell. */
function isCrankRow(report: ReportCircuit, row: ReportCircuit['ringing'][number], circuit: Circuit): boolean {
  if (!circuit.sets[row.from]?.generator || row.from === row.to) return false
  return (
    report.ringing.findIndex(({ from, to }) => from === row.from && to === row.to) ===
    report.ringing.indexOf(row)
  )
}

const pickRows = <T>(rows: readonly T[]): T[] =>
  [...new Set([rows[0], rows.at(-1)])].filter((row) => row !== undefined) as T[]

/** The port of a ringdown unit that a station hangs on, with the node at which the unit drives it. */
function portCircuit(
  file: PlanFile,
  circuit: Circuit,
  station: string,
  from: string,
): { circuit: Circuit; at: string } {
  const unit = file.plan.circuits[0].supply.at
  const own = portsOf(circuit, unit).find(({ stations, lines }) =>
    station === unit ? lines.length === 0 : stations.includes(station),
  )!
  return { circuit: own, at: station === unit || from === unit ? unit : from }
}

async function checkLoop(file: PlanFile, circuit: Circuit, report: ReportCircuit): Promise<void> {
  const row = report.loop[Math.floor(report.loop.length / 2)]
  if (!row) return
  const [a, b] = row.call
  const supply = file.plan.catalog.supplies[0]
  const at = file.plan.circuits[0].supply.at
  const name = `${file.plan.title} loop`
  if (supply.kind === 'series') {
    const far = a === at ? b : a
    const passive = [
      ...ladder(circuit, 0),
      ...bells(circuit, [a, b], 0),
      `Rfar ${far} 0 ${circuit.sets[far].offHook.dcOhms}`,
    ]
    const dc = circuit.sets[at].offHook.dcOhms
    const free = [...passive, ...source(supply, at, dc)]
    const ohms = supply.ohms + (supply.indicator?.ohms ?? 0) + dc
    const amps = ((await volts(free, 'dcs', 0)) - (await volts(free, at, 0))) / ohms
    const limited = supply.maxMA !== undefined && amps > supply.maxMA / 1000
    const cards = limited ? [...passive, `Idc 0 ${at} ${supply.maxMA / 1000}`] : free
    const farAmps = (await volts(cards, far, 0)) / circuit.sets[far].offHook.dcOhms
    const nearAmps = limited ? supply.maxMA / 1000 : amps
    compare(name, row.mA, (row.station === at ? nearAmps : farAmps) * 1000)
    return
  }
  let place = { circuit, at }
  let offHook: readonly string[] = row.call
  if (supply.kind === 'ringdown') {
    place = portCircuit(file, circuit, row.station, at)
    offHook = row.call.filter((id) => id === row.station || (id in place.circuit.sets && row.station !== at))
  }
  const found = await feedVolts(place.circuit, supply, place.at, offHook)
  compare(
    name,
    row.mA,
    (found[offHook.indexOf(row.station)]! / circuit.sets[row.station].offHook.dcOhms) * 1000,
  )
}

describe.each(SUPPLY_KINDS)('with %s as supply', (kind) => {
  describe.each(['tree', 'ring'] as const)('a random %s', (shape) => {
    test(`agrees with the circuit simulator, ${CIRCUITS_EACH.length} times over`, {
      timeout: 300_000,
    }, async () => {
      for (const k of CIRCUITS_EACH) {
        const file = randomPlan(
          1000 * SUPPLY_KINDS.indexOf(kind) + 100 * (shape === 'ring' ? 1 : 0) + k,
          kind,
          shape,
        )
        const plan = parsePlan(JSON.stringify(file))
        if (!plan.ok) throw new Error(JSON.stringify(plan.problems))
        const report = reportPlan(plan.value)
        const wireM = Object.fromEntries(report.lines.map(({ id, wireM }) => [id, wireM]))
        const circuit = circuitOf(file, wireM)
        const figures = report.circuits[0]!
        await checkVoice(file, circuit, figures)
        await checkRinging(file, circuit, figures)
        if (kind !== 'none') await checkLoop(file, circuit, figures)
      }
      console.log(
        `${compared} figures so far, worst ${(worst.difference * 100).toFixed(4)} % (${worst.what})`,
      )
    })
  })
})
