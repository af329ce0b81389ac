import type { Lack, Lacks, Remark, Remarks } from '../budget/circuit-notes'
import { isolated } from '../isolated'
import type { Tongue } from './tongue'
import { formatCount, formatDb, formatList, formatMA, plainNumber } from './units'

type Sayings<T> = { readonly [C in keyof T]: (figures: T[C], say: Tongue) => string }

const LACKS: Sayings<Lacks> = {
  'one-set': () => 'A circuit needs a set at two stations at least.',
  'no-supply': ({ station }, { name }) =>
    `The common-battery set at ${name(station)} has no supply on its circuit.`,
  'battery-without-set': ({ station }, { name }) =>
    `The battery stands in a leg of the set at ${name(station)}, and no set stands there.`,
  'no-call': ({ a, b, lamp }, { name }) => {
    const pair = `${name(a)} and ${name(b)} have no way to call each other by bell or lamp`
    if (lamp?.why === 'elsewhere') return `${pair}: the lamp shows only to whoever is at ${name(lamp.at)}.`
    if (lamp?.why === 'dim')
      return `${pair}: the lamp at ${name(lamp.at)} gets ${formatMA(lamp.mA)} and is seen from ${formatMA(lamp.minMA)} on.`
    return `${pair}.`
  },
  'bell-looks-lifted': ({ station, mA, offHookMA }, { name }) =>
    `The bell of ${name(station)} looks like a lifted handset to this supply: it draws ${formatMA(mA)}, and ${formatMA(offHookMA)} count as answered. Put a capacitor in series with the bell.`,
  'more-without-call': ({ count }) => `${count} more pairs of sets have no way to call each other.`,
  'no-current': ({ station, supply }, { name }) =>
    `The common-battery set at ${name(station)} gets no current: ${supply} sends none. Take a set with a battery of its own.`,
  'too-few-ports': ({ supply, lines, ports, wouldDo }, { name }) => {
    const mend = wouldDo ? `take ${name(wouldDo)}` : `take one with ${lines} or more`
    return `${formatCount(lines, 'line')} come in at ${name(supply)}, which has ${formatCount(ports, 'port')}: ${mend}, or let lines meet before it.`
  },
  'cannot-call-board': ({ stations, board }, { name }) =>
    `${formatList(stations.map(name), stations.length)} cannot call the board at ${name(board)}: ${stations.length === 1 ? 'the set there has' : 'the sets there have'} no generator.`,
  'board-without': ({ supply, part }) =>
    part === 'drop'
      ? `${supply} has no drops, so that nobody sees who calls.`
      : `${supply} has no generator, so that it rings nobody.`,
  'on-one-port': ({ stations }, { name }) =>
    `${formatList(stations.map(name), stations.length)} hang on one port of the exchange and cannot call each other: lead a pair from each to a port of its own.`,
}

const REMARKS: Sayings<Remarks> = {
  'battery-rings-nothing': () =>
    'A battery in one leg rings nothing: agree on times to call, or listen for a shout on the line.',
  'only-with-battery': ({ station }, { name }) =>
    `Only calls with the set at ${name(station)} have current: the others cannot talk to each other.`,
  'indicator-takes-all': ({ supply, volts }) =>
    `The indicator of ${isolated(supply)} takes all of its ${plainNumber(volts)} V: no current flows.`,
  'bells-look-lifted': ({ mA, offHookMA }) =>
    `All bells together draw ${formatMA(mA)}, and ${formatMA(offHookMA)} count as answered: the supply may take the line as lifted.`,
  'lamp-one-way': ({ at, others }, { name }) =>
    `The lamp calls only whoever is at ${name(at)}: ${formatList(others.map(name))} cannot be called from there and must listen at agreed times.`,
  'nobody-listens': ({ stations }, { name }) =>
    `Nobody listens at ${formatList(stations.map(name))}: the wire ends there without a telephone.`,
  'worn-unknown': ({ wire }) =>
    `How much ${isolated(wire)} leaks when it is worn is not known: wet, it is reckoned as new.`,
  'same-port': ({ stations }, { name }) =>
    `${formatList(stations.map(name), stations.length)} hang on one side of the unit: it does not ring one of them when another is lifted.`,
  'rides-and-saves': ({ over, wireM, kg }, { run, mass }) =>
    `As a ${over} it takes no wire of its own: a pair beside the others would take ${run(wireM)}, ${mass(kg)}.`,
  'has-coils': ({ voiceDb, ringDb }) =>
    `Another circuit rides on this one: the repeating coils at its two ends take ${formatDb(voiceDb)} off speech and ${formatDb(ringDb)} off ringing, and let no direct current through.`,
  'bells-over-load': ({ stations, load, supply, maxLoad }, { name }) =>
    `The bells at ${formatList(stations.map(name), stations.length)} are a load of ${load.toFixed(1)}; ${isolated(supply)} is made for ${plainNumber(maxLoad)}.`,
}

/** What a circuit cannot do without, as a sentence. */
export const lackSentence = (lack: Lack, say: Tongue): string =>
  (LACKS[lack.code] as (figures: Lack, say: Tongue) => string)(lack, say)

/** What a circuit's people should know, as a sentence. */
export const remarkSentence = (remark: Remark, say: Tongue): string =>
  (REMARKS[remark.code] as (figures: Remark, say: Tongue) => string)(remark, say)
