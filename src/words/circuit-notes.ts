import type { Lack, Lacks, Remark, Remarks } from '../budget/circuit-notes'
import type { Tongue } from './tongue'
import { formatList, plainNumber } from './units'

type Sayings<T> = { readonly [C in keyof T]: (figures: T[C], say: Tongue) => string }

const LACKS: Sayings<Lacks> = {
  'one-set': () => 'A circuit needs a set at two stations at least.',
  'no-supply': ({ station }, { name }) =>
    `The common-battery set at ${name(station)} has no supply on its circuit.`,
  'battery-without-set': ({ station }, { name }) =>
    `The battery stands in a leg of the set at ${name(station)}, and no set stands there.`,
  'no-call': ({ a, b }, { name }) =>
    `${name(a)} and ${name(b)} have no way to call each other by bell or lamp.`,
  'more-without-call': ({ count }) => `${count} more pairs of sets have no way to call each other.`,
}

const REMARKS: Sayings<Remarks> = {
  'battery-rings-nothing': () =>
    'A battery in one leg rings nothing: agree on times to call, or listen for a shout on the line.',
  'only-with-battery': ({ station }, { name }) =>
    `Only calls with the set at ${name(station)} have current: the others cannot talk to each other.`,
  'indicator-takes-all': ({ supply, volts }) =>
    `The indicator of ${supply} takes all of its ${plainNumber(volts)} V: no current flows.`,
  'same-port': ({ stations }, { name }) =>
    `${formatList(stations.map(name), stations.length)} hang on one side of the unit: it does not ring one of them when another is lifted.`,
  'bells-over-load': ({ stations, load, supply, maxLoad }, { name }) =>
    `The bells at ${formatList(stations.map(name), stations.length)} are a load of ${load.toFixed(1)}; ${supply} is made for ${plainNumber(maxLoad)}.`,
}

/** What a circuit cannot do without, as a sentence. */
export const lackSentence = (lack: Lack, say: Tongue): string =>
  (LACKS[lack.code] as (figures: Lack, say: Tongue) => string)(lack, say)

/** What a circuit's people should know, as a sentence. */
export const remarkSentence = (remark: Remark, say: Tongue): string =>
  (REMARKS[remark.code] as (figures: Remark, say: Tongue) => string)(remark, say)
