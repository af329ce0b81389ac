import { constantsOf } from '../budget/line-constants'
import { STEP_NEPERS } from '../field/gauge'
import { conditionsAt, meterSigma, nepersOf } from '../field/readings'
import { scaledWire } from '../field/wire-figures'
import type { MeterReading } from './evidence'
import { atPlan, type Bench, LEAST_SIGMA, type Manner, type Observation, standOf } from './observation'
import { parted, type Run, routeTo, routeToFar } from './route'
import type { Trouble } from './trouble'

/** A stake at the far end, and how far it may be off, nepers. Allowances. */
const STAKE_OHMS = 50
const STAKE_SIGMA = 0.3
/** What wire in the wet or the dry has to the earth hangs on the ground it lies on: a reading of that much tells little, nepers. Allowance. */
const LEAKAGE_SIGMA = 0.7
/** From this part of the wire's own leakage on a reading is taken for it, and above so many ohms a line serves: more tells nothing. From memory. */
const OF_LEAKAGE = 0.2
const SERVES_OHMS = 1e5

const beside = (...ohms: readonly number[]): number => 1 / ohms.reduce((sum, each) => sum + 1 / each, 0)

/**
 * Ohms of one wire to the earth: those of the wire up to the fault and the fault's own, beside the wire's leakage, and beside the way
 * to the far end where the wire is joined to a stake there. Half of the loop's ohms are those of one wire; leakage between two wires is
 * that of both to the earth in series, so that one has twice as much to it.
 *
 * Derived.
 */
export function earthObservation(bench: Bench, reading: MeterReading, manner: Manner): Observation | null {
  const { plan, model, figures, nepers: tried } = bench
  const stand = standOf(model, reading)
  if (!stand) return null
  const conditions = conditionsAt(atPlan(plan, manner), reading)
  const unit = reading.what === 'kOhms' ? 1000 : 1
  const { far, wire: asked } = reading
  const byFigure = [-1, ...figures.keys()].map((figure) => {
    const nepers = Float64Array.from(figures, (_, k) => tried[k]! + (k === figure ? STEP_NEPERS : 0))
    const of = (line: Run['line']) =>
      constantsOf({ ...line, wire: scaledWire(line.wire, figures, nepers) }, conditions)
    const constants = new Map(stand.model.lines.map((line) => [line, of(line)]))
    const ohmsOf = (runs: readonly Run[]) =>
      runs.reduce((sum, { line, wireM }) => sum + (constants.get(line)!.ohmPerKm * wireM) / 2000, 0)
    const siemens = stand.model.lines.reduce(
      (sum, line) => sum + (2 * constants.get(line)!.siemensPerKm * line.wireM) / 1000,
      0,
    )
    return { ohmsOf, leakage: 1 / Math.max(siemens, 1e-10) }
  })
  const way = routeToFar(stand)
  const nepers = (ohms: number) => nepersOf(reading.what, Math.min(ohms, SERVES_OHMS) / unit)
  const shown = (ohms: readonly number[]) => Float64Array.from(ohms, nepers)
  const sound = shown(
    byFigure.map(({ ohmsOf, leakage }) =>
      beside(leakage, far === 'short' ? ohmsOf(way) + STAKE_OHMS : Number.POSITIVE_INFINITY),
    ),
  )
  const soundOhms = Math.min(byFigure[0]!.leakage, SERVES_OHMS)
  const isLeakage = reading.value * unit > OF_LEAKAGE * soundOhms
  const sigma = isLeakage ? LEAKAGE_SIGMA : far === 'short' ? STAKE_SIGMA : 0
  return {
    read: nepers(reading.value * unit),
    sigma: Math.hypot(meterSigma(reading.what, reading.value, reading.meterPct), sigma, LEAST_SIGMA),
    untaken: reading.tempC === undefined,
    bears: () => true,
    sound: () => sound,
    at: (line, wireM, side) => {
      const route = routeTo(stand, line, wireM, side)
      const all = ({ element, toEarth, wire }: Trouble, ohms: number): Float64Array => {
        const isOwn = wire === undefined || wire === asked
        if (!route || !isOwn || !(toEarth || element === 'broken')) return sound
        const { shared, off } = parted(route, way)
        return shown(
          byFigure.map(({ ohmsOf, leakage }) => {
            if (!toEarth) return leakage
            const restOhms = Math.max(0, ohmsOf(way) - ohmsOf(shared))
            const beyond = far === 'short' ? restOhms + STAKE_OHMS : Number.POSITIVE_INFINITY
            return beside(leakage, ohmsOf(shared) + beside(ohmsOf(off) + ohms, beyond))
          }),
        )
      }
      return { first: (trouble, ohms) => all(trouble, ohms)[0]!, all }
    },
  }
}
