import { expect, test } from 'vitest'
import { conditionsOf } from '../../src/budget/conditions'
import { oddsOf } from '../../src/budget/odds'
import { seeded } from '../../src/budget/seeded'
import { BUILT_IN } from '../../src/catalog/built-in'
import { mergeCatalogs } from '../../src/catalog/catalog'
import { parsePlan } from '../../src/files/parse-plan'
import { measurePlan } from '../../src/measure/measure-line'
import type { Plan } from '../../src/plan/plan'
import { circuitNetwork } from '../../src/report/circuit-network'
import { reportPlan } from '../../src/report/report-plan'
import { cases, todaysCases } from '../cases'
import { callMA } from './direct-current'
import { manyAtOnce } from './many-volts-at'
import { bells, type Circuit, circuitOf, ladder } from './netlist'
import { portsOf } from './ports'
import { type PlanFile, randomPlan } from './random-plan'
import { simulator } from './volts-at'

// An independent Monte Carlo: other random numbers, another way of making them normal, and every check from the circuit simulator.
// `ALL=1 CASES=3 ODDS_SAMPLES=300` runs the whole of it.
const CIRCUITS = cases(4)
const TODAY = todaysCases(4, 4)
const SAMPLES = Number(process.env.ODDS_SAMPLES ?? 60)
const OURS = 2000
const KINDS = ['none', 'feed', 'ringdown', 'series'] as const
/** Coarser than where figures are compared: x² / 24 of 1/6 is 0.1 %, and a share of some hundred samples is known to a tenth. */
const SECTIONS_PER_NEPER = 6

const WIRE = { loopOhmPerKm: 8, nanoFPerKm: 10, dryMicroSPerKm: 50, wetMicroSPerKm: 50 }
const SET = {
  ...{ 'ringer.ohms': 10, 'ringer.minVolts': 12, 'offHook.dcOhms': 8, 'offHook.acOhms': 8 },
  ...{ 'generator.volts': 8, maxLossDb: 4, 'offHook.minMA': 6, 'offHook.dropVolts': 6 },
}
const SUPPLY = { volts: 5, ohms: 10, 'ring.volts': 8 }

function planOf(file: PlanFile): Plan {
  const read = parsePlan(JSON.stringify(file))
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  return read.value
}

/** A random circuit of few sets, each of whose limits its printed figures just meet, with spreads. */
function circuitNearItsLimits(seed: number, kind: (typeof KINDS)[number]): PlanFile | undefined {
  const file = randomPlan(seed, kind, 'tree')
  const { catalog, circuits } = file.plan
  for (const supply of catalog.supplies) delete supply.indicator
  if (Object.keys(circuits[0].sets).length > 4) return undefined
  const random = seeded(seed)
  for (const { talk, offHook } of catalog.sets)
    if (talk === 'common' && random() < 0.6) offHook.dropVolts = 1 + 4 * random()
  const found = reportPlan(planOf(file)).circuits[0]!
  if (found.missing.length > 0) return undefined
  const typeAt = (station: string) =>
    catalog.sets.find(({ id }: PlanFile) => id === circuits[0].sets[station])
  for (const set of catalog.sets) {
    const own = (station: string) => typeAt(station) === set
    const volts = found.ringing.filter(({ to }) => own(to)).map((row) => row.volts)
    const mA = found.loop.filter(({ station }) => own(station)).map((row) => row.mA)
    if (set.ringer && volts.length > 0) set.ringer.minVolts = 0.93 * Math.min(...volts)
    if (mA.length > 0) set.offHook.minMA = 0.96 * Math.min(...mA)
    set.maxLossDb = 1.03 * Math.max(1, ...found.voice.map((row) => row.lossDb))
    set.spread = SET
  }
  for (const wire of catalog.wires) wire.spread = WIRE
  for (const supply of catalog.supplies) supply.spread = SUPPLY
  return file
}

/** Standard normal numbers by the polar method (G. Marsaglia, 1964). */
function polarNormal(random: () => number): () => number {
  return () => {
    for (;;) {
      const [u, v] = [2 * random() - 1, 2 * random() - 1]
      const s = u * u + v * v
      if (s > 0 && s < 1) return u * Math.sqrt((-2 * Math.log(s)) / s)
    }
  }
}

/** A copy of an entry as one real thing has it. */
function drawn(entry: PlanFile, normal: () => number): PlanFile {
  const copy = structuredClone(entry)
  for (const [place, pct] of Object.entries(entry.spread as Record<string, number>)) {
    const names = place.split('.')
    const last = names.pop()!
    const holder = names.reduce((inner, name) => inner?.[name], copy)
    if (typeof holder?.[last] === 'number') holder[last] *= (1 + pct / 100) ** (normal() / 1.96)
  }
  return copy
}

type VoltsAt = Awaited<ReturnType<typeof simulator>>

/** Volts of a circuit with these parts across it. */
const across = (circuit: Circuit, hz: number, offHook: readonly string[], parts: readonly string[]) => [
  ...ladder(circuit, hz, SECTIONS_PER_NEPER),
  ...bells(circuit, offHook, hz),
  ...parts,
]

/** Whether every check of a circuit passes, by the simulator. */
async function works(
  circuit: Circuit,
  supply: PlanFile | undefined,
  at: string,
  volts: VoltsAt,
): Promise<boolean> {
  const ports = supply?.kind === 'ringdown' ? portsOf(circuit, at) : [circuit]
  const portOf = (id: string) => ports.find(({ sets }) => sets[id])
  for (const port of ports) {
    if (!(await allRing(port, supply, at, volts)) || !(await allFed(port, ports.length, supply, at, volts)))
      return false
  }
  const stations = Object.keys(circuit.sets)
  for (const [i, a] of stations.entries()) {
    for (const b of stations.slice(i + 1)) {
      const [za, zb] = [circuit.sets[a].offHook.acOhms, circuit.sets[b].offHook.acOhms]
      const ends = ['Vs vs 0 dc 0 ac 1', `Ra vs ${a} ${za}`, `Rb ${b} 0 ${zb}`]
      const [heard] = await volts(across(circuit, 1000, [a, b], ends), [b], 1000)
      const throughUnit = portOf(a) === portOf(b) ? 0 : (supply?.insertionDb ?? 0)
      const lossDb = throughUnit - 20 * Math.log10(heard! / (zb / (za + zb)))
      if (lossDb > Math.min(circuit.sets[a].maxLossDb, circuit.sets[b].maxLossDb)) return false
    }
  }
  return true
}

/** Every bell of a port, from its cranks and from the supply. */
async function allRing(port: Circuit, supply: PlanFile | undefined, at: string, volts: VoltsAt) {
  const stations = Object.keys(port.sets)
  const cranks = stations.filter((id) => port.sets[id].generator)
  const sources = cranks.map((id) => ({ from: id, own: [id], ...port.sets[id].generator }))
  if (supply?.ring && supply.kind !== 'series') sources.push({ from: at, own: [], ...supply.ring })
  for (const { from, own, volts: open, hz, ohms } of sources) {
    const rung = stations.filter((id) => port.sets[id].ringer && !own.includes(id))
    if (rung.length === 0) continue
    const source = [`Vs vs 0 dc 0 ac ${open}`, `Rs vs ${from} ${ohms}`]
    const found = await volts(across(port, hz, own, source), rung, hz)
    if (rung.some((id, k) => found[k]! < port.sets[id].ringer.minVolts)) return false
  }
  return true
}

/** Every call's current: of two sets on one pair together, across a unit of each by itself. */
async function allFed(
  port: Circuit,
  ports: number,
  supply: PlanFile | undefined,
  at: string,
  volts: VoltsAt,
) {
  if (!supply) return true
  const stations = Object.keys(port.sets)
  const alone = supply.kind === 'ringdown' && ports > 1 ? stations.map((id) => [id]) : []
  const together = stations.flatMap((a, i) => stations.slice(i + 1).map((b) => [a, b]))
  for (const call of [...alone, ...together]) {
    if (supply.kind === 'series' && !call.includes(at)) continue
    const mA = await callMA(port, supply, at, call, volts, SECTIONS_PER_NEPER)
    if (call.some((id, k) => mA[k]! < port.sets[id].offHook.minMA)) return false
  }
  return true
}

test('the odds are those of an independent Monte Carlo over the circuit simulator', {
  timeout: 3_600_000,
}, async () => {
  const volts = manyAtOnce(await simulator())
  let shares = 0
  for (let k = 0, seed = 1; k < CIRCUITS; seed++) {
    const file = circuitNearItsLimits(seed, KINDS[k % KINDS.length]!)
    if (!file || !TODAY.includes(k++)) continue
    const plan = planOf(file)
    const measured = measurePlan(plan)
    const circuit = [...plan.circuits.values()][0]!
    const model = circuitNetwork(plan, circuit, mergeCatalogs(BUILT_IN, plan.catalog), measured)
    const ours = oddsOf(model, conditionsOf(plan.weather, plan.wireTempC), { samples: OURS, seed: 1 }).today
      .works

    const normal = polarNormal(seeded(99_000 + seed))
    const wireM = Object.fromEntries([...measured].map(([id, line]) => [id, line.wireM]))
    const oneOf = () => {
      const { catalog } = file.plan
      const wires = catalog.wires.map((wire: PlanFile) => drawn(wire, normal))
      const lot = { ...file, plan: { ...file.plan, catalog: { ...catalog, wires } } }
      const printed = circuitOf(lot, wireM)
      const sets = Object.fromEntries(
        Object.entries(printed.sets).map(([station, set]) => [station, drawn(set, normal)]),
      )
      const supply = catalog.supplies[0] && drawn(catalog.supplies[0], normal)
      return works({ ...printed, sets }, supply, file.plan.circuits[0].supply?.at ?? '', volts)
    }
    const outcomes = await Promise.all(Array.from({ length: SAMPLES }, oneOf))
    const working = outcomes.filter(Boolean).length
    const theirs = working / SAMPLES
    // Three standard deviations of the difference of two shares, with the add-two rule so that none of a few counts for something.
    const p = (working + 2) / (SAMPLES + 4)
    const sampling = 3 * Math.sqrt(p * (1 - p) * (1 / SAMPLES + 1 / OURS))
    console.log(
      `${file.plan.title}, ${KINDS[(k - 1) % KINDS.length]}: ${ours} against ${theirs.toFixed(3)} ± ${sampling.toFixed(3)}`,
    )
    if (theirs > 0.05 && theirs < 0.95) shares++
    expect(Math.abs(ours - theirs), file.plan.title).toBeLessThan(sampling)
  }
  expect(shares, 'circuits that neither always nor never work').toBeGreaterThanOrEqual(TODAY.length / 2)
})
