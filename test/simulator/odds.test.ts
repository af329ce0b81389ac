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
import { bells, type Circuit, circuitOf, ladder } from './netlist'
import { type PlanFile, randomPlan } from './random-plan'
import { simulator } from './volts-at'

// An independent Monte Carlo: other random numbers, another way of making them normal, and every check from the circuit simulator.
// `ODDS_CIRCUITS=10 ODDS_SAMPLES=300` runs the whole of it.
const CIRCUITS = Number(process.env.ODDS_CIRCUITS ?? 3)
const SAMPLES = Number(process.env.ODDS_SAMPLES ?? 40)
const OURS = 4000
const KINDS = ['none', 'feed', 'series'] as const

const WIRE = { loopOhmPerKm: 8, nanoFPerKm: 10, dryMicroSPerKm: 50, wetMicroSPerKm: 50 }
const SET = {
  ...{ 'ringer.ohms': 10, 'ringer.minVolts': 12, 'offHook.dcOhms': 8, 'offHook.acOhms': 8 },
  ...{ 'generator.volts': 8, maxLossDb: 4, 'offHook.minMA': 6 },
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

/** Whether every check of a circuit passes, by the simulator. */
async function works(circuit: Circuit, supply: PlanFile | undefined, at: string | undefined, volts: VoltsAt) {
  const stations = Object.keys(circuit.sets)
  for (const [i, a] of stations.entries()) {
    for (const b of stations.slice(i + 1)) {
      const [za, zb] = [circuit.sets[a].offHook.acOhms, circuit.sets[b].offHook.acOhms]
      const ends = ['Vs vs 0 dc 0 ac 1', `Ra vs ${a} ${za}`, `Rb ${b} 0 ${zb}`]
      const [heard] = await volts(
        [...ladder(circuit, 1000), ...bells(circuit, [a, b], 1000), ...ends],
        [b],
        1000,
      )
      const lossDb = -20 * Math.log10(heard! / (zb / (za + zb)))
      if (lossDb > Math.min(circuit.sets[a].maxLossDb, circuit.sets[b].maxLossDb)) return false
    }
  }
  const cranks = stations.filter((id) => circuit.sets[id].generator)
  const sources = cranks.map((id) => ({ from: id, own: [id], ...circuit.sets[id].generator }))
  if (supply?.ring && supply.kind !== 'series') sources.push({ from: at, own: [], ...supply.ring })
  for (const { from, own, volts: open, hz, ohms } of sources) {
    const rung = stations.filter((id) => circuit.sets[id].ringer && !own.includes(id))
    if (rung.length === 0) continue
    const source = [`Vs vs 0 dc 0 ac ${open}`, `Rs vs ${from} ${ohms}`]
    const found = await volts([...ladder(circuit, hz), ...bells(circuit, own, hz), ...source], rung, hz)
    if (rung.some((id, k) => found[k]! < circuit.sets[id].ringer.minVolts)) return false
  }
  for (const [i, a] of stations.entries()) {
    for (const b of supply ? stations.slice(i + 1) : []) {
      if (supply.kind === 'series' && a !== at && b !== at) continue
      const carrier = supply.kind === 'series' ? circuit.sets[at!].offHook.dcOhms : 0
      const most = supply.maxMA === undefined ? 1e3 : supply.maxMA / 1000
      const call = [a, b].filter((id) => supply.kind !== 'series' || id !== at)
      const cards = [
        ...ladder(circuit, 0),
        ...bells(circuit, [a, b], 0),
        `Bs 0 ${at} I = min((${supply.volts} - V(${at}))/${supply.ohms + carrier}, ${most})`,
        ...call.map((id) => `Rc${id} ${id} 0 ${circuit.sets[id].offHook.dcOhms}`),
      ]
      const found = await volts(cards, [...call, at!], 0)
      const least = (id: string) => circuit.sets[id].offHook.minMA
      if (call.some((id, k) => (1000 * found[k]!) / circuit.sets[id].offHook.dcOhms < least(id))) return false
      const through = Math.min((supply.volts - found.at(-1)!) / (supply.ohms + carrier), most)
      if (supply.kind === 'series' && 1000 * through < least(at!)) return false
    }
  }
  return true
}

test('the odds are those of an independent Monte Carlo over the circuit simulator', {
  timeout: 3_600_000,
}, async () => {
  const volts = await simulator()
  let shares = 0
  for (let k = 0, seed = 1; k < CIRCUITS; seed++) {
    const file = circuitNearItsLimits(seed, KINDS[k % KINDS.length]!)
    if (!file) continue
    k++
    const plan = planOf(file)
    const measured = measurePlan(plan)
    const circuit = [...plan.circuits.values()][0]!
    const model = circuitNetwork(plan, circuit, mergeCatalogs(BUILT_IN, plan.catalog), measured)
    const ours = oddsOf(model, conditionsOf(plan.weather, plan.wireTempC), { samples: OURS, seed: 1 }).today
      .works

    const normal = polarNormal(seeded(99_000 + seed))
    const wireM = Object.fromEntries([...measured].map(([id, line]) => [id, line.wireM]))
    let working = 0
    for (let sample = 0; sample < SAMPLES; sample++) {
      const { catalog } = file.plan
      const wires = catalog.wires.map((wire: PlanFile) => drawn(wire, normal))
      const lot = { ...file, plan: { ...file.plan, catalog: { ...catalog, wires } } }
      const printed = circuitOf(lot, wireM)
      const sets = Object.fromEntries(
        Object.entries(printed.sets).map(([station, set]) => [station, drawn(set, normal)]),
      )
      const supply = catalog.supplies[0] && drawn(catalog.supplies[0], normal)
      if (await works({ ...printed, sets }, supply, file.plan.circuits[0].supply?.at, volts)) working++
    }
    const theirs = working / SAMPLES
    // Three standard deviations of the difference of two shares, with the add-two rule so that none of a few counts for something.
    const p = (working + 2) / (SAMPLES + 4)
    const sampling = 3 * Math.sqrt(p * (1 - p) * (1 / SAMPLES + 1 / OURS))
    console.log(
      `${file.plan.title}, ${KINDS[(k - 1) % 3]}: ${ours} against ${theirs.toFixed(3)} ± ${sampling.toFixed(3)}`,
    )
    if (theirs > 0.05 && theirs < 0.95) shares++
    expect(Math.abs(ours - theirs), file.plan.title).toBeLessThan(sampling)
  }
  expect(shares, 'circuits that neither always nor never work').toBeGreaterThan(CIRCUITS / 2)
})
