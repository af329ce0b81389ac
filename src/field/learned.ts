import { type CircuitModel, circuitModel } from '../budget/circuit-model'
import type { Catalog } from '../catalog/catalog'
import type { Wire } from '../catalog/wire'
import { remembering } from '../memo'
import type { CircuitId } from '../plan/id'
import type { Circuit, Plan } from '../plan/plan'
import { standingRecords } from '../plan/standing-records'
import { explained, type Oddity } from './explain'
import { type Gauge, gaugeOf, STEP_NEPERS } from './gauge'
import {
  type Learned,
  type LearnedFigure,
  type LearnedFigures,
  type Learning,
  type Lengths,
  NOTHING_LEARNED,
  type Question,
  type Splices,
} from './learned-figures'
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
import { figuresOf, scaledWire, spreadOf, type WireFigure } from './wire-figures'

/** A reading so many standard deviations from what is expected comes about by chance three times in a thousand: it is odd. */
const ODD_SIGMAS = 3

/** A figure whose spread has shrunk by less than this part was told of by no reading. */
const LEAST_TOLD = 0.02

const Z95 = 1.959964

/** What the readings of a plan teach of its wire. As long as nothing changes that they hang on, the answer is the very same. */
export const learnedFrom: Learning = (plan, catalog, measured, splices) => {
  const readings = readingsOf(plan.field)
  if (readings.length === 0) return unread(plan, catalog, measured, splices)
  const { weather, wireTempC } = plan
  const withSets = readings.some(({ far }) => far === 'set')
    ? [plan.circuits, plan.lines, plan.allowances]
    : []
  const ofLines = [...new Set(readings.map(({ line }) => line))].flatMap((id) => {
    const { wire, worn, return: way, electrodeOhms } = plan.lines.get(id)!
    return [measured.get(id)?.wireM, splices?.get(id), wire, worn, way, electrodeOhms]
  })
  const { spliceOhms, spliceMicroS } = plan.allowances
  const from = [readings, catalog, weather, wireTempC, spliceOhms, spliceMicroS, ...ofLines, ...withSets]
  return once(...from)(plan, catalog, measured, splices)
}

const readingsOf = remembering((field: Plan['field']): readonly Reading[] =>
  standingRecords(field ? { field } : {}).filter(
    (record): record is Reading => record.kind === 'reading' && !record.stale,
  ),
)

const once = remembering((..._from: readonly unknown[]) => {
  let result: Learned | undefined
  return (plan: Plan, catalog: Catalog, measured: Lengths, splices: Splices): Learned => {
    result ??= learn(plan, catalog, measured, splices)
    return result
  }
})

const unread = (plan: Plan, catalog: Catalog, measured: Lengths, splices: Splices): Learned => ({
  ...NOTHING_LEARNED,
  expect: (question) => {
    const bench = benchOf(plan, catalog, measured, splices, [question])
    return bench.expect(question, bench.fit([]))
  },
})

/** A reading made ready: what it shows for figures of the wire, and how far the instrument leaves that in doubt. */
interface Prepared {
  readonly reading: Reading
  readonly nepers: number
  readonly sigma: number
  readonly gauge: (nepers: Float64Array) => Gauge
}

function learn(plan: Plan, catalog: Catalog, measured: Lengths, splices: Splices): Learned {
  const readings = readingsOf(plan.field)
  const bench = benchOf(plan, catalog, measured, splices, readings)
  const prepared = readings.flatMap((reading) => bench.prepare(reading) ?? [])
  const { kept, odd } = sorted(prepared, bench.fit)
  const fit = bench.fit(kept)
  const figures = new Map<string, LearnedFigures>()
  const learnt = new Map<string, Wire>()
  for (const [id, wire] of catalog.wires) {
    const told = bench.figures.flatMap((figure, k) =>
      figure.wire === id && fit.fit.sigma[k]! < 1 - LEAST_TOLD ? [{ figure, k }] : [],
    )
    if (told.length === 0) continue
    figures.set(
      id,
      Object.fromEntries(
        told.map(({ figure, k }) => [figure.member, figureOf(wire[figure.member]!, figure, fit, k)]),
      ),
    )
    learnt.set(id, learntWire(wire, bench.figures, fit))
  }
  const asked = (each: Prepared): Oddity => {
    const others = bench.fit(kept.filter((other) => other !== each))
    const found = bench.expect(each.reading, others)!
    const { line, wireM, toward } = each.reading
    const aheadM = toward === 'from' ? wireM : Math.max(0, measured.get(line)!.wireM - wireM)
    const { tempCoeffPerC } = catalog.wires.get(plan.lines.get(line)!.wire)!
    const { reading } = each
    return explained({ reading, expected: found, sigmas: others.sigmasOf(each) }, aheadM, tempCoeffPerC)
  }
  return {
    learnt,
    figures,
    odd: odd.map(asked).sort((a, b) => Math.abs(b.sigmas) - Math.abs(a.sigmas)),
    expect: (question) => bench.expect(question, fit),
  }
}

function figureOf(book: number, { sigma }: WireFigure, { fit }: Fitted, k: number): LearnedFigure {
  const [middle, left] = [fit.middle[k]! * sigma, fit.sigma[k]! * sigma]
  return {
    value: book * Math.exp(middle),
    low: book * Math.exp(middle - Z95 * left),
    high: book * Math.exp(middle + Z95 * left),
    book,
  }
}

function learntWire(wire: Wire, figures: readonly WireFigure[], { nepers, fit }: Fitted): Wire {
  const spread = Object.fromEntries(
    figures.flatMap(({ wire: id, member, sigma }, k) =>
      id === wire.id ? [[member, spreadOf(sigma * fit.sigma[k]!)]] : [],
    ),
  )
  return { ...scaledWire(wire, figures, nepers), spread: { ...wire.spread, ...spread } }
}

/**
 * Takes the readings apart that the catalog alone would hardly bring about, and those that do not go with the rest: of several the one
 * that lies farthest off, as long as one does.
 */
function sorted(all: readonly Prepared[], fitOf: (kept: readonly Prepared[]) => Fitted) {
  const book = fitOf([])
  const isFromBook = (each: Prepared) => Math.abs(book.sigmasOf(each)) <= ODD_SIGMAS
  let kept = all.filter(isFromBook)
  const odd = all.filter((each) => !isFromBook(each))
  while (kept.length > 0) {
    const { fit } = fitOf(kept)
    let worst = 0
    for (const [k, sigmas] of fit.apartSigmas.entries())
      if (Math.abs(sigmas) > Math.abs(fit.apartSigmas[worst]!)) worst = k
    if (Math.abs(fit.apartSigmas[worst]!) <= ODD_SIGMAS) break
    odd.push(kept[worst]!)
    kept = kept.filter((_, k) => k !== worst)
  }
  // What was thought odd only for another's sake goes with the rest after all.
  const fit = fitOf(kept)
  const back = odd.filter((each) => isFromBook(each) && Math.abs(fit.sigmasOf(each)) <= ODD_SIGMAS)
  return { kept: [...kept, ...back], odd: odd.filter((each) => !back.includes(each)) }
}

interface Fitted {
  readonly fit: Fit
  /** By how much each figure is more than the catalog's, nepers. */
  readonly nepers: Float64Array
  /** How far a reading that is not among those fitted lies from what they lead one to expect, in standard deviations. */
  readonly sigmasOf: (each: Prepared) => number
}

/** Everything that a reading is reckoned with. */
function benchOf(
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
