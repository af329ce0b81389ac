import { type CircuitModel, circuitModel } from '../budget/circuit-model'
import type { Catalog } from '../catalog/catalog'
import type { CircuitId } from '../plan/id'
import type { Circuit, Plan } from '../plan/plan'
import { type Gauge, gaugeOf, STEP_NEPERS } from './gauge'
import type { Lengths, Question, Splices } from './learned-figures'
import { type Fit, fitReadings } from './linear-fit'
import { onlyTheWay, probeOf, standOnLine } from './probe'
import {
  conditionsAt,
  type Expected,
  meterSigma,
  nepersOf,
  type Reading,
  readingOf,
  setSigma,
  UNTAKEN_TEMP_C,
} from './readings'
import { figuresOf } from './wire-figures'

export const Z95 = 1.959964

/** A reading made ready: what it shows for figures of the wire, and how far the instrument leaves that in doubt. */
export interface Prepared {
  readonly reading: Reading
  readonly nepers: number
  readonly sigma: number
  readonly gauge: (nepers: Float64Array) => Gauge
}

export interface Fitted {
  readonly fit: Fit
  /** By how much each figure is more than the catalog's, nepers. */
  readonly nepers: Float64Array
  /** How far a reading that is not among those fitted lies from what they lead one to expect, in standard deviations. */
  readonly sigmasOf: (each: Prepared) => number
}

/** Everything that a reading is reckoned with. */
export function benchOf(
  plan: Plan,
  catalog: Catalog,
  measured: Lengths,
  splices: Splices,
  readings: readonly Pick<Reading, 'line'>[],
) {
  const wires = readings.flatMap(({ line }) => catalog.wires.get(plan.lines.get(line)!.wire) ?? [])
  const figures = figuresOf(wires).filter(({ sigma }) => sigma > 0)
  const models = new Map<string, CircuitModel>()
  const modelOf = (circuit: Circuit): CircuitModel => {
    const known = models.get(circuit.id) ?? circuitModel(plan, circuit, catalog, measured, splices)
    models.set(circuit.id, known)
    return known
  }
  const standOf = ({ line, wireM, toward, far }: Pick<Reading, 'line' | 'wireM' | 'toward' | 'far'>) => {
    const circuit =
      far === 'set' ? [...plan.circuits.values()].find(({ lines }) => lines.includes(line)) : null
    const alone = { id: `\n${line}` as CircuitId, name: '', lines: [line], sets: new Map(), supply: null }
    const stand = standOnLine(modelOf(circuit ?? alone), line, wireM, toward)
    return stand && (circuit ? stand : onlyTheWay(stand))
  }

  const prepare = (question: Question, value = 0) => {
    const stand = standOf(question)
    const probe = stand && probeOf(stand, question.what, question.far)
    if (!stand || !probe) return null
    const conditions = conditionsAt(plan, question)
    const { tempCoeffPerC } = stand.model.lines[[...stand.way][0]!]!.wire
    const bySet = question.far === 'set' ? setSigma(stand, question.what) : 0
    const byTemp =
      question.tempC === undefined && question.what === 'loopOhms' ? tempCoeffPerC * UNTAKEN_TEMP_C : 0
    const meter = meterSigma(question.what, value, question.meterPct)
    return {
      nepers: nepersOf(question.what, value),
      sigma: Math.hypot(meter, bySet, byTemp),
      gauge: (nepers: Float64Array) => gaugeOf(probe, conditions, figures, nepers),
    }
  }

  /** What is shown with the figures as they are taken to be, nepers, and its slopes. */
  const shownBy = (what: Reading['what'], gauge: Gauge) => {
    const values = gauge.sound()
    const middle = nepersOf(what, values[0]!)
    const slopes = Float64Array.from(figures, ({ sigma }, k) =>
      values[k + 1] === values[0] ? 0 : ((nepersOf(what, values[k + 1]!) - middle) / STEP_NEPERS) * sigma,
    )
    return { middle, slopes }
  }

  const fit = (kept: readonly Prepared[]): Fitted => {
    let nepers: Float64Array = new Float64Array(figures.length)
    let found: Fit | undefined
    // What is read follows nearly in proportion: three steps are more than enough.
    for (let step = 0; step < 3; step++) {
      const shown = kept.map((each) => shownBy(each.reading.what, each.gauge(nepers)))
      const apart = Float64Array.from(kept, (each, k) => {
        const { middle, slopes } = shown[k]!
        const taken = figures.reduce(
          (sum, { sigma }, f) => sum + (slopes[f]! * nepers[f]!) / Math.max(sigma, 1e-300),
          0,
        )
        return each.nepers - middle + taken
      })
      found = fitReadings(
        shown.map(({ slopes }) => slopes),
        apart,
        Float64Array.from(kept, ({ sigma }) => sigma),
        figures.length,
      )
      const { middle } = found
      nepers = Float64Array.from(figures, ({ sigma }, f) => middle[f]! * sigma)
    }
    const result = found!
    const sigmasOf = (each: Prepared): number => {
      const { middle, slopes } = shownBy(each.reading.what, each.gauge(nepers))
      return (each.nepers - middle) / Math.hypot(each.sigma, doubtOf(slopes, result))
    }
    return { fit: result, nepers, sigmasOf }
  }

  const doubtOf = (slopes: Float64Array, { covariance }: Fit): number => {
    const n = figures.length
    let sum = 0
    for (let f = 0; f < n; f++)
      for (let g = 0; g < n; g++) sum += slopes[f]! * covariance[f * n + g]! * slopes[g]!
    return Math.sqrt(Math.max(0, sum))
  }

  const expect = (question: Question, { fit, nepers }: Fitted): Expected | null => {
    const first = prepare(question)
    if (!first) return null
    const { middle, slopes } = shownBy(question.what, first.gauge(nepers))
    const value = readingOf(question.what, middle)
    const { sigma } = prepare(question, value)!
    const half = Z95 * Math.hypot(sigma, doubtOf(slopes, fit))
    return {
      value,
      low: readingOf(question.what, middle - half),
      high: readingOf(question.what, middle + half),
    }
  }

  return {
    figures,
    fit,
    expect,
    prepare: (reading: Reading): Prepared | null => {
      const prepared = prepare(reading, reading.value)
      return prepared && { reading, ...prepared }
    },
  }
}
