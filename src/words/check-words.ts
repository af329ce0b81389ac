import { CHECKS } from '../budget/checks'
import type { Check, CheckKind, CheckOf, RowOf } from '../budget/rows'
import { judge, leastOf } from '../budget/verdict'
import { formatDb, formatList, formatMA, formatVolts, plainNumber } from './units'

type NameOf = (stationId: string) => string

/** How one kind of check is asked, answered and tabled. */
export interface CheckWords<K extends CheckKind> {
  /** Heading over its figures. */
  readonly ask: string
  /** Whether it is asked only where there is a supply. */
  readonly needsSupply: boolean
  /** What the figure is, for `How this is reckoned`. */
  readonly reckoned: string
  /** As it stands in a sentence: `the bell at Quarry`. */
  readonly about: (check: CheckOf<K>, nameOf: NameOf) => string
  /** The question's answer, in one sentence. */
  readonly answer: (rows: readonly RowOf[K][], nameOf: NameOf) => string
  /** One row's name, and how its figure reads. */
  readonly label: (check: CheckOf<K>, nameOf: NameOf) => string
  readonly figure: (have: number) => string
  /** Share of what is needed: 1 where there is just as much, 3 where nothing is needed; more is better. */
  readonly share: (have: number, limit: number) => number
  /** Whether the two ways of a call that read alike are one row: `Hut ↔ Ford`. */
  readonly bothWays: boolean
  /** Heads of its two columns in a table of calls, and of the box to tick. */
  readonly columns: {
    readonly figure: string
    /** The same where each station has one row. */
    readonly byStation: string
    readonly limit: string
    readonly tick: string | null
    /** Widths, in shares of a sheet. */
    readonly shares: readonly [number, number]
  }
}

const unique = (names: readonly string[]) => [...new Set(names)]
const ratio = (have: number, limit: number) => (limit > 0 ? have / limit : 3)
const arrow = ({ from, to }: { from: string; to: string }, nameOf: NameOf) =>
  `${nameOf(from)} → ${nameOf(to)}`

/** Every kind of check in the order in which a person asks. */
export const CHECK_WORDS: { readonly [K in CheckKind]: CheckWords<K> } = {
  ringing: {
    ask: 'Will it ring?',
    needsSupply: false,
    reckoned: 'Ringing: volts rms across each bell, all other bells bridged.',
    about: ({ to }, nameOf) => `the bell at ${nameOf(to)}`,
    answer: (rows, nameOf) => {
      const faintest = leastOf('ringing', rows)?.row
      if (!faintest)
        return 'Nothing rings here: there is no hand generator and no source of ringing, or no bell to hear it.'
      const bell = `${formatVolts(faintest.volts)} and needs ${plainNumber(faintest.minVolts)} V`
      const failing = unique(
        rows.filter((row) => judge('ringing', row) === 'fails').map((row) => nameOf(row.to)),
      )
      if (failing.length === 1) return `Not at ${failing[0]}: the bell gets ${bell}.`
      if (failing.length > 1)
        return `Not at ${formatList(failing)}: the faintest bell, at ${nameOf(faintest.to)}, gets ${bell}.`
      if (judge('ringing', faintest) === 'thin')
        return `Barely at ${nameOf(faintest.to)}: the bell gets ${bell}.`
      return `Yes. The faintest bell, at ${nameOf(faintest.to)}, gets ${bell}.`
    },
    label: arrow,
    figure: formatVolts,
    share: ratio,
    bothWays: false,
    columns: { figure: 'Ring V', byStation: 'Ring V', limit: 'least', tick: 'Rings', shares: [13, 11] },
  },
  loop: {
    ask: 'Is there enough current?',
    needsSupply: true,
    reckoned: 'Current: milliamperes through each of two sets off hook.',
    about: ({ station }, nameOf) => `the current at ${nameOf(station)}`,
    answer: (rows, nameOf) => {
      const weakest = leastOf('loop', rows)?.row
      if (!weakest) return 'No two sets that need the battery can speak over it.'
      const [a, b] = weakest.call
      const set = `the set at ${nameOf(weakest.station)} gets ${formatMA(weakest.mA)} and needs ${plainNumber(weakest.minMA)} mA when ${nameOf(a)} speaks with ${nameOf(b)}`
      const verdict = judge('loop', weakest)
      if (verdict === 'works') return `Yes. The weakest: ${set}.`
      return `${verdict === 'thin' ? 'Barely' : 'No'}: ${set}.`
    },
    label: (check, nameOf) => {
      const { from, to } = CHECKS.loop.call(check)
      return `${nameOf(from)} with ${nameOf(to)}`
    },
    figure: formatMA,
    share: ratio,
    bothWays: false,
    columns: { figure: 'mA at From', byStation: 'mA', limit: 'least', tick: null, shares: [15, 11] },
  },
  voice: {
    ask: 'Will it talk?',
    needsSupply: false,
    reckoned: 'Speech: insertion loss at 1000 Hz from one set off hook to another.',
    about: ({ from, to }, nameOf) => `speech from ${nameOf(from)} to ${nameOf(to)}`,
    answer: (rows, nameOf) => {
      const weakest = leastOf('voice', rows)?.row
      if (!weakest) return 'There are no two sets here to speak with each other.'
      const pair = `${nameOf(weakest.from)} to ${nameOf(weakest.to)}`
      const loss = `${formatDb(weakest.lossDb)} of loss, where ${plainNumber(weakest.maxDb)} dB is the most`
      const verdict = judge('voice', weakest)
      if (verdict === 'works') return `Yes. The faintest pair is ${pair}: ${loss}.`
      return `${verdict === 'thin' ? 'Barely' : 'Not'} from ${pair}: ${loss}.`
    },
    label: arrow,
    figure: formatDb,
    // Loss is good when small: 3 without any, 1 at the most that is allowed, and less beyond.
    share: (lossDb, maxDb) => (lossDb <= maxDb ? 1 + (2 * (maxDb - lossDb)) / maxDb : maxDb / lossDb),
    bothWays: true,
    columns: { figure: 'Loss dB', byStation: 'Loss dB', limit: 'most', tick: 'Talks', shares: [13, 11] },
  },
}

/** The kinds in the order in which a person asks. */
export const ASKED_KINDS = Object.keys(CHECK_WORDS) as readonly CheckKind[]

/** The words of a kind that is known only at run time. */
export const wordsOf = <K extends CheckKind>(kind: K): CheckWords<K> =>
  CHECK_WORDS[kind] as unknown as CheckWords<K>

/** What a check is about, as it stands in a sentence: `the bell at Quarry`. */
export const checkWords = (check: Check, nameOf: NameOf): string =>
  wordsOf(check.kind).about(check as never, nameOf)
