import type { CircuitModel } from '../budget/circuit-model'
import type { FaultElement } from '../field/fault-ports'
import { gaugeOf } from '../field/gauge'
import type { What } from '../field/probe'
import { onlyTheWay, probeOf, type Stand, standAtStation, standOnLine } from '../field/probe'
import { conditionsAt, meterSigma, nepersOf, setSigma, UNTAKEN_TEMP_C } from '../field/readings'
import type { WireFigure } from '../field/wire-figures'
import type { Plan } from '../plan/plan'
import type { Echo, MeterReading } from './evidence'
import type { Hypothesis, Trouble } from './trouble'

/** What is not said of how the evidence was taken, taken one way for all of it. */
export interface Manner {
  /** Branches off the way are still on, and so are the telephones at other stations. */
  readonly branches: boolean
  readonly otherSets: boolean
  /** Where nobody says it, the weather was not the plan's. */
  readonly otherWeather: boolean
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
  /** By how much each figure is tried more than it is in the catalog, nepers: what is read is followed in proportion from there. */
  readonly nepers: ArrayLike<number>
  /** Kinds of fault that come into question. */
  readonly hypotheses: readonly Hypothesis[]
  /** Lines on which each other circuit lies in the same cable or beside it, by that circuit. */
  readonly beside: ReadonlyMap<string, ReadonlySet<string>>
}

/** An earth on one wire is no part of the pair's own network; and a capacitance goes on along a pair that has changed its place. */
export const elementOf = ({ kind, element, toEarth }: Trouble, what?: What): FaultElement =>
  toEarth || (kind === 'swapped' && what === 'nanoF') ? 'none' : element

/** The plan's weather, or the other. */
export const atPlan = (plan: Bench['plan'], manner: Manner): Bench['plan'] =>
  manner.otherWeather ? { ...plan, weather: plan.weather === 'wet' ? 'dry' : 'wet' } : plan

/** Where the instrument of a reading stands; null where the circuit has no such place or way. */
export const standOf = (model: CircuitModel, reading: MeterReading | Echo): Stand | null =>
  'line' in reading
    ? standOnLine(model, reading.line, reading.wireM, reading.toward)
    : standAtStation(model, reading.at, reading.toward)

/** Clips and plugs, Ω, standard deviation. Allowance. */
const CONTACT_OHMS = 0.05

/** A reading as something that faults are held against. */
export function meterObservation(
  { plan, model, figures, nepers: tried }: Bench,
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
  const gauge = gaugeOf(probe, conditionsAt(atPlan(plan, manner), reading), figures, tried)
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
        first: (trouble, ohms) => nepersOf(what, placed.first(elementOf(trouble, what), ohms)),
        all: (trouble, ohms) => nepers(placed.all(elementOf(trouble, what), ohms)),
      }
    },
  }
}

/** No model of a real line is better than this, nepers. */
export const LEAST_SIGMA = 0.001

/** What a temperature that nobody took leaves in doubt, nepers for each neper of a wire's ohms. */
export const tempNepers = (tempCoeffPerC: number): number => tempCoeffPerC * UNTAKEN_TEMP_C
