import { type AlongPoint, dcVoltsAlong, ringVoltsAlong } from '../budget/along-the-line'
import { lossAgainstHz } from '../budget/choices'
import type { CircuitModel } from '../budget/circuit-model'
import { completenessOf } from '../budget/completeness'
import type { Conditions } from '../budget/conditions'
import { worstCorner } from '../budget/envelope'
import type { CircuitRows } from '../budget/rows'
import { leastOf } from '../budget/verdict'
import { type UnitSystem, unitOf } from '../words/units'
import type { Plot, PlotCurve } from './plot-layout'

/** What the plots of one circuit are drawn from. */
interface Drawn {
  readonly model: CircuitModel
  readonly today: Conditions
  readonly worst: Conditions
  /** Figures of the worst corner: they choose whom a plot is about. */
  readonly rows: CircuitRows
  readonly nameOf: (station: string) => string
  readonly system: UnitSystem
}

const HZ_TICKS = [300, 500, 1000, 2000, 3400]

/**
 * The plots of a circuit: loss against frequency for the pair of sets with least to spare, then ring volts and direct volts along
 * the wire to the set with least. What a circuit does not do has no plot.
 *
 * @param today the plan's own conditions; the worst corner of the envelope is found here
 */
export function circuitPlots(
  model: CircuitModel,
  today: Conditions,
  nameOf: (station: string) => string,
  system: UnitSystem,
): readonly Plot[] {
  const { missing } = completenessOf(model, today)
  const { conditions, rows } = worstCorner(model, today, missing)
  const drawn: Drawn = { model, today, worst: conditions, rows, nameOf, system }
  return [lossPlot(drawn), ringPlot(drawn), dcPlot(drawn)].filter((plot) => plot !== null)
}

function lossPlot({ model, today, rows, nameOf }: Drawn): Plot | null {
  const least = leastOf('voice', rows.voice)
  if (!least) return null
  const { check, row } = least
  const { maxDb } = row
  const curves = (['dry', 'wet'] as const).map((weather): PlotCurve => {
    const loss = lossAgainstHz(model, { ...today, weather }, check.from, check.to)
    return { name: weather, points: loss.map(({ hz, lossDb }) => ({ x: hz, y: lossDb })) }
  })
  return {
    title: `Loss of speech, ${nameOf(check.from)} to ${nameOf(check.to)}`,
    says: curvesInWords(curves, 'dB', ['at 300 Hz', 'at 3400 Hz']),
    x: { label: 'Frequency, Hz', log: true, ticks: HZ_TICKS },
    y: { label: 'Loss, dB' },
    curves,
    level: { name: `${maxDb} dB: the most, at 1000 Hz`, y: maxDb },
    places: [],
  }
}

function ringPlot(drawn: Drawn): Plot | null {
  const { model, rows, nameOf } = drawn
  const least = leastOf('ringing', rows.ringing)
  if (!least) return null
  const { check, row } = least
  const { minVolts } = row
  return plotAlong(
    drawn,
    `Ring volts, ${nameOf(check.from)} to ${nameOf(check.to)}`,
    (conditions) => ringVoltsAlong(model, conditions, check.from, check.to),
    { name: `${minVolts} V: the least the bell needs`, y: minVolts },
  )
}

function dcPlot(drawn: Drawn): Plot | null {
  const { model, rows, nameOf } = drawn
  const supply = model.supply && model.stations[model.supply.node]!
  // At the supply's own station there is no wire to show volts along.
  const loop = rows.loop.filter(({ station }) => station !== supply)
  const check = leastOf('loop', loop)?.check
  if (!supply || !check) return null
  const { set } = model.sets.find(({ node }) => model.stations[node] === check.station)!
  const leastVolts = (set.offHook.dropVolts ?? 0) + (set.offHook.minMA / 1000) * set.offHook.dcOhms
  return plotAlong(
    drawn,
    `Battery volts, ${nameOf(supply)} to ${nameOf(check.station)}`,
    (conditions) => dcVoltsAlong(model, conditions, check.station),
    { name: `${Number(leastVolts.toFixed(1))} V: the least across the set`, y: leastVolts },
  )
}

function plotAlong(
  { today, worst, nameOf, system }: Drawn,
  title: string,
  voltsAlong: (conditions: Conditions) => readonly AlongPoint[],
  level: { readonly name: string; readonly y: number },
): Plot | null {
  const along = voltsAlong(today)
  const [first, last] = [along[0], along.at(-1)]
  if (!first || !last || along.length < 2) return null
  const { fromSi, sign } = unitOf('lengthKm', system)
  const curve = (name: string, points: readonly AlongPoint[]): PlotCurve => ({
    name,
    points: points.map(({ wireM, volts }) => ({ x: fromSi(wireM), y: volts })),
  })
  const curves = [curve('today', along), curve('at worst', voltsAlong(worst))]
  const at = ({ station }: AlongPoint) => `at ${nameOf(station!)}`
  return {
    title,
    says: `${curvesInWords(curves, 'V', [at(first), at(last)])} ${level.name}.`,
    x: { label: `Wire from ${nameOf(first.station!)}, ${sign}` },
    y: { label: 'Volts' },
    curves,
    level,
    places: along.flatMap(({ station, wireM }) =>
      station === null ? [] : [{ name: nameOf(station), x: fromSi(wireM) }],
    ),
  }
}

/** `today: 80.0 V at Hut, 41.2 V at Ford.` */
const curvesInWords = (curves: readonly PlotCurve[], unit: string, ends: readonly [string, string]): string =>
  curves
    .map(({ name, points }) => {
      const [from, to] = [points[0]!, points.at(-1)!].map(({ y }) => `${y.toFixed(1)} ${unit}`)
      return `${name}: ${from} ${ends[0]}, ${to} ${ends[1]}.`
    })
    .join(' ')
