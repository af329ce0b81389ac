import type { Catalog } from '../catalog/catalog'
import type { Wire } from '../catalog/wire'
import { remembering } from '../memo'
import type { Plan } from '../plan/plan'
import { standingRecords } from '../plan/standing-records'
import { explained, type Oddity } from './explain'
import {
  type Learned,
  type LearnedFigure,
  type LearnedFigures,
  type Learning,
  type Lengths,
  NOTHING_LEARNED,
  type Splices,
} from './learned-figures'
import { benchOf, type Fitted, type Prepared, Z95 } from './reading-bench'
import type { Reading } from './readings'
import { scaledWire, spreadOf, type WireFigure } from './wire-figures'

/** A reading so many standard deviations from what is expected comes about by chance three times in a thousand: it is odd. */
const ODD_SIGMAS = 3

/** A figure whose spread has shrunk by less than this part was told of by no reading. */
const LEAST_TOLD = 0.02

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
