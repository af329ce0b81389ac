import type { CircuitModel, ModelSet } from '../budget/circuit-model'
import { constantsOf } from '../budget/line-constants'
import { shortestWay } from '../budget/path'
import { ringingSides } from '../budget/ringing'
import type { Spread } from '../catalog/sources'
import type { FaultElement } from '../field/fault-ports'
import { gaugeOf, STEP_NEPERS } from '../field/gauge'
import {
  onlyTheWay,
  type Probe,
  probeOf,
  ringProbe,
  type Stand,
  speechProbe,
  standAtStation,
  standNowhere,
  standOnLine,
} from '../field/probe'
import { conditionsAt, meterSigma, nepersOf, setSigma, UNTAKEN_TEMP_C } from '../field/readings'
import { scaledWire, sigmaOf, type WireFigure } from '../field/wire-figures'
import type { Plan } from '../plan/plan'
import { type Answer, type Bridge, type Crank, type Evidence, isReading, type MeterReading } from './evidence'

/** What is not said of how the evidence was taken, taken one way for all of it. */
export interface Manner {
  /** Branches off the way are still on, and so are the telephones at other stations. */
  readonly branches: boolean
  readonly otherSets: boolean
  /** Where nobody says it, the weather was not the plan's. */
  readonly otherWeather: boolean
}

/** A fault at one place: as a part of the network, and whether it joins one wire to the earth. */
export interface Trouble {
  readonly element: FaultElement
  readonly toEarth: boolean
}

/** A measured figure, in nepers or as a part of something, and what it would be with a fault. */
export interface Observation {
  readonly read: number
  readonly sigma: number
  /** Nobody took the temperature of the wire: its ohms are in doubt by that. */
  readonly untaken: boolean
  /** Whether such a fault lets the reading come about by a rule: a bridge does not balance over a break. */
  readonly bears: (trouble: Trouble) => boolean
  readonly sound: () => Float64Array
  readonly at: (line: string, wireM: number, side: number) => Seen
}

/** What an observation would be with a fault at a place: `first` for the figures as they are, `all` for each a little greater too. */
export interface Seen {
  readonly first: (trouble: Trouble, ohms: number) => number
  readonly all: (trouble: Trouble, ohms: number) => Float64Array
}

/** Something that was said to go or not: the logarithm of the chance of just that answer. */
export interface Witness {
  readonly sound: () => number
  readonly at: (line: string, wireM: number, side: number) => (trouble: Trouble, ohms: number) => number
}

export interface Bench {
  readonly plan: Pick<Plan, 'weather' | 'wireTempC'>
  readonly model: CircuitModel
  readonly figures: readonly WireFigure[]
}

/** An earth on one wire is no part of the pair's own network. */
const elementOf = ({ element, toEarth }: Trouble): FaultElement => (toEarth ? 'none' : element)

const atPlan = (plan: Bench['plan'], manner: Manner): Bench['plan'] =>
  manner.otherWeather ? { ...plan, weather: plan.weather === 'wet' ? 'dry' : 'wet' } : plan

/** Where the instrument of a reading stands; null where the circuit has no such place or way. */
export const standOf = (model: CircuitModel, reading: MeterReading): Stand | null =>
  'line' in reading
    ? standOnLine(model, reading.line, reading.wireM, reading.toward)
    : standAtStation(model, reading.at, reading.toward)

/** Clips and plugs, Ω, standard deviation. Allowance. */
const CONTACT_OHMS = 0.05

/** A reading as something that faults are held against. */
export function meterObservation(
  { plan, model, figures }: Bench,
  reading: MeterReading,
  manner: Manner,
): Observation | null {
  const whole = standOf(model, reading)
  const stand = whole && (manner.branches || reading.far === 'set' ? whole : onlyTheWay(whole))
  const probe = stand && probeOf(stand, reading.what, reading.far, manner.otherSets)
  if (!stand || !probe) return null
  const { what, value, meterPct } = reading
  const ofSet = reading.far === 'set' ? setSigma(stand, what) : 0
  const contact = what === 'loopOhms' ? CONTACT_OHMS / Math.max(value, 0.1) : 0
  const sigma = Math.hypot(meterSigma(what, value, meterPct), ofSet, contact, LEAST_SIGMA)
  const gauge = gaugeOf(probe, conditionsAt(atPlan(plan, manner), reading), figures)
  const nepers = (values: Float64Array) => values.map((each) => nepersOf(what, each))
  return {
    read: nepersOf(what, value),
    sigma,
    untaken: reading.tempC === undefined && probe.hz === 0,
    // What a capacitance meter shows across wires that touch is no capacitance.
    bears: ({ element, toEarth }) => what !== 'nanoF' || element !== 'across' || toEarth,
    sound: () => nepers(gauge.sound()),
    at: (line, wireM, side) => {
      const placed = gauge.at(line, wireM, side)
      return {
        first: (trouble, ohms) => nepersOf(what, placed.first(elementOf(trouble), ohms)),
        all: (trouble, ohms) => nepers(placed.all(elementOf(trouble), ohms)),
      }
    },
  }
}

/** No model of a real line is better than this, nepers. */
const LEAST_SIGMA = 0.001

/** A bridge reads to this where nobody says better, %. */
const USUAL_BRIDGE_PCT = 1

/** The ways of a bridge's loop, and how much of it lies before a place. */
function bridgeWay({ plan, model, figures }: Bench, bridge: Bridge, manner: Manner) {
  const way = shortestWay(model, model.stations.indexOf(bridge.at), model.stations.indexOf(bridge.toward))
  if (!way || way.length === 0) return null
  const conditions = conditionsAt(atPlan(plan, manner), bridge)
  const tried = [-1, ...figures.keys()].map((figure) => {
    const nepers = Float64Array.from(figures, (_, k) => (k === figure ? STEP_NEPERS : 0))
    return way.map((line) => {
      const wire = scaledWire(line.wire, figures, nepers)
      return (constantsOf({ ...line, wire }, conditions).ohmPerKm * line.wireM) / 1000
    })
  })
  const forward: boolean[] = []
  let node = model.stations.indexOf(bridge.at)
  const nodes = [node]
  for (const line of way) {
    forward.push(line.from === node)
    node = line.from === node ? line.to : line.from
    nodes.push(node)
  }
  /** How far a fault at a place lies, as a line of the way and a part of it; on a branch it seems to lie where that leaves the way. */
  const placeOf = (id: string, wireM: number): { index: number; part: number } | null => {
    const index = way.findIndex((line) => line.id === id)
    if (index !== -1) {
      const part = wireM / way[index]!.wireM
      return { index, part: forward[index] ? part : 1 - part }
    }
    const branch = model.lines.find((line) => line.id === id)
    if (!branch || !manner.branches) return null
    let met = branch.from
    for (const line of shortestWay(model, branch.from, nodes[0]!) ?? []) {
      if (nodes.includes(met)) break
      met = line.from === met ? line.to : line.from
    }
    return { index: Math.max(0, nodes.indexOf(met)), part: 0 }
  }
  const shares = (
    id: string,
    wireM: number,
  ): readonly { readonly before: number; readonly loop: number }[] => {
    const place = placeOf(id, wireM)
    return tried.map((ohms) => {
      const loop = ohms.reduce((sum, each) => sum + each, 0)
      if (!place) return { before: loop / 2, loop }
      const past = ohms.slice(0, place.index).reduce((sum, each) => sum + each, 0)
      return { before: (past + (ohms[place.index] ?? 0) * place.part) / 2, loop }
    })
  }
  return { shares, byEarth: way.some(({ electrodeOhms }) => electrodeOhms !== null) }
}

/** Whether the bridge's loop goes through the earth, so that there is no good wire to come back on. */
export const goesByEarth = (bench: Bench, bridge: Bridge): boolean =>
  bridgeWay(bench, bridge, { branches: true, otherSets: false, otherWeather: false })?.byEarth ?? false

/**
 * A bridge: Murray's balances at x / L = a / (a + b), Varley's, of equal arms, at R = L − 2x, with x the ohms of the faulty wire up to the
 * fault and L the loop. It balances where a fault leads its current off: to earth, or to the other wire.
 *
 * Source: Hawkins Electrical Guide, vol. 3 (1914), loop tests.
 */
export function bridgeObservations(bench: Bench, bridge: Bridge, manner: Manner): readonly Observation[] {
  const way = bridgeWay(bench, bridge, manner)
  if (!way) return []
  const pct = sigmaOf(bridge.meterPct ?? USUAL_BRIDGE_PCT)
  const observed = (
    read: number,
    sigma: number,
    untaken: boolean,
    of: (share: { readonly before: number; readonly loop: number }, loop: number) => number,
    bears: Observation['bears'],
  ): Observation => {
    const valuesAt = (line: string, wireM: number) => {
      const shares = way.shares(line, wireM)
      return Float64Array.from(shares, (share) => of(share, shares[0]!.loop))
    }
    const sound = () => valuesAt('', 0)
    return {
      read,
      sigma: Math.hypot(sigma, LEAST_SIGMA),
      untaken,
      bears,
      sound,
      at: (line, wireM) => {
        const values = valuesAt(line, wireM)
        return { first: () => values[0]!, all: () => values }
      },
    }
  }
  const leadsOff = ({ element, toEarth }: Trouble) => toEarth || element === 'across'
  if ('murray' in bridge) {
    const [faulty, good] = bridge.murray
    const read = faulty / Math.max(faulty + good, 1e-9)
    // In parts of the loop: a division more or less is the same at every place; near the meter the error is no less than that of a slide.
    return [observed(read, Math.max(read * pct, 5e-4), false, ({ before, loop }) => before / loop, leadsOff)]
  }
  const { loop } = way.shares('', 0)[0]!
  const rheostat = bridge.varley / loop
  const varley = observed(
    rheostat,
    Math.max(rheostat * pct, 1e-3),
    bridge.tempC === undefined,
    (share, nominal) => (share.loop - 2 * share.before) / nominal,
    leadsOff,
  )
  if (bridge.loopOhms === undefined) return [varley]
  const whole = observed(
    Math.log(Math.max(bridge.loopOhms, 1e-3)),
    pct,
    bridge.tempC === undefined,
    (share) => Math.log(share.loop),
    () => true,
  )
  return [varley, whole]
}

const phi = (z: number): number => 0.5 * (1 + erf(z / Math.SQRT2))

/** Error function to 1.5e-7. Source: M. Abramowitz and I. Stegun, Handbook of Mathematical Functions (1964), 7.1.26. */
export function erf(x: number): number {
  const t = 1 / (1 + 0.3275911 * Math.abs(x))
  const poly =
    t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))))
  const value = 1 - poly * Math.exp(-x * x)
  return x < 0 ? -value : value
}

/** People mishear, hang up, and ring the wrong code: no answer is surer than this. Allowance. */
const SURE = 0.98

const answerLn = (chance: number): number => Math.log(1 - SURE + (2 * SURE - 1) * chance)

const spread = (entry: { readonly spread?: Spread } | undefined, ...members: readonly string[]): number =>
  Math.hypot(0.1, ...members.map((member) => sigmaOf(entry?.spread?.[member] ?? 0)))

function witnessOf({ plan, figures }: Bench, probe: Probe, chanceOf: (shown: number) => number): Witness {
  const gauge = gaugeOf(probe, conditionsAt(plan, {}), figures.slice(0, 0))
  return {
    sound: () => answerLn(chanceOf(gauge.sound()[0]!)),
    at: (line, wireM, side) => {
      const placed = gauge.at(line, wireM, side)
      return (trouble, ohms) => answerLn(chanceOf(placed.first(elementOf(trouble), ohms)))
    },
  }
}

/** Who rings whom: whether the volts at the bell are enough. Null where nothing there rings. */
function ringWitness(bench: Bench, [from, to]: readonly [string, string], ok: boolean): Witness | null {
  for (const { circuit } of ringingSides(bench.model)) {
    const [source, node] = [circuit.stations.indexOf(from), circuit.stations.indexOf(to)]
    const bell = circuit.sets.find((each) => each.node === node)?.set
    if (source === -1 || node === -1 || !bell?.ringer) continue
    const probe = ringProbe(standNowhere(circuit, node, source), source)
    if (!probe) continue
    const crank = circuit.sets.find((each) => each.node === source)?.set
    const sigma = Math.hypot(spread(bell, 'ringer.minVolts', 'ringer.ohms'), spread(crank, 'generator.volts'))
    const least = bell.ringer.minVolts
    return witnessOf(bench, probe, (volts) => {
      const rings = phi(Math.log(Math.max(volts, 1e-6) / least) / sigma)
      return ok ? rings : 1 - rings
    })
  }
  return null
}

/** Who hears whom: whether speech loses no more than the sets can bear. */
function hearWitness(bench: Bench, [a, b]: readonly [string, string], ok: boolean): Witness | null {
  const { model } = bench
  const setAt = (station: string): ModelSet | undefined =>
    model.sets.find(({ node }) => model.stations[node] === station)
  const [from, to] = [setAt(a), setAt(b)]
  if (!from || !to) return null
  const stand = standNowhere(model, to.node, from.node)
  const most = Math.min(from.set.maxLossDb, to.set.maxLossDb)
  const sigmaDb = most * sigmaOf(to.set.spread?.maxLossDb ?? 0) + 3
  return witnessOf(bench, speechProbe(stand, from, to), (lossDb) => {
    const hears = phi((most - Math.min(lossDb, 300)) / sigmaDb)
    return ok ? hears : 1 - hears
  })
}

/** How the crank turns: heavy into a short, light into nothing, against what it turns into when all is well. */
function crankWitness(bench: Bench, { crank, at }: Crank): Witness | null {
  const { model } = bench
  const own = model.sets.find(({ node, set }) => model.stations[node] === at && set.generator)
  if (!own) return null
  const { hz } = own.set.generator!
  const stand = standNowhere(model, own.node, own.node)
  const ring = ringProbe(stand, own.node)!
  const probe: Probe = { ...ring, ports: [own.node], shows: (re, im) => Math.hypot(re[0]!, im[0]!), hz }
  const usual = gaugeOf(probe, conditionsAt(bench.plan, {}), []).sound()[0]!
  // A hand tells a load of half or of twice the usual from it, more or less. Allowance.
  return witnessOf(bench, probe, (ohms) => {
    const nepers = Math.log(ohms / usual)
    const heavy = phi((-Math.log(2) - nepers) / 0.4)
    const light = phi((nepers - Math.log(2)) / 0.4)
    return crank === 'heavy' ? heavy : crank === 'light' ? light : Math.max(0, 1 - heavy - light)
  })
}

/** A stretch that was found sound: a fault there is as good as out of the question. */
function soundWitness({ line: own, fromM, toM }: { line: string; fromM: number; toM: number }): Witness {
  return {
    sound: () => 0,
    at: (line, wireM, side) => () =>
      line === own && side >= fromM && side <= toM && wireM >= fromM && wireM <= toM ? Math.log(1e-4) : 0,
  }
}

/** What a temperature that nobody took leaves in doubt, nepers for each neper of a wire's ohms. */
export const tempNepers = (tempCoeffPerC: number): number => tempCoeffPerC * UNTAKEN_TEMP_C

/** All evidence, ready to hold faults against. */
export function observed(
  bench: Bench,
  evidence: readonly Evidence[],
  manner: Manner,
): { readonly observations: readonly Observation[]; readonly witnesses: readonly Witness[] } {
  const observations: Observation[] = []
  const witnesses: Witness[] = []
  const put = <T>(list: T[], each: T | null) => void (each && list.push(each))
  const answered = (answer: Answer) =>
    'rings' in answer
      ? ringWitness(bench, answer.rings, answer.ok)
      : hearWitness(bench, answer.hears, answer.ok)
  for (const each of evidence) {
    if (isReading(each)) put(observations, meterObservation(bench, each, manner))
    else if ('murray' in each || 'varley' in each)
      observations.push(...bridgeObservations(bench, each, manner))
    else if ('sound' in each) witnesses.push(soundWitness(each.sound))
    else if ('crank' in each) put(witnesses, crankWitness(bench, each))
    else put(witnesses, answered(each))
  }
  return { observations, witnesses }
}
