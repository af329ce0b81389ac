import { DB_PER_NEPER } from '../units'
import type { CircuitModel } from './circuit-model'
import type { Conditions } from './conditions'
import { eachLoop } from './dc-loop'
import { eachRinging } from './ringing'
import type { CheckKind, CheckOf, RowOf, TakeFigure } from './rows'
import { eachVoice } from './voice-loss'

/** The comfort line: a check that passes with less than this to spare is thin. Allowances of the plan format. */
const COMFORT = { loopRatio: 1.1, ringRatio: 1.25, voiceDb: 3 } as const

/** All that the program knows of one kind of check; its words stand in `words/check-words.ts`. */
interface Trade<K extends CheckKind> {
  /** All its figures for a circuit. */
  readonly each: (model: CircuitModel, conditions: Conditions, take: TakeFigure) => void
  readonly row: (...figure: Parameters<TakeFigure>) => RowOf[K]
  readonly named: (row: RowOf[K]) => CheckOf<K>
  /** What there is and the limit, in the unit of the check. */
  readonly have: (row: RowOf[K]) => number
  readonly limit: (row: RowOf[K]) => number
  /** What there is to spare, in nepers: below 0 it fails. */
  readonly spare: (have: number, limit: number) => number
  /** Whether what passes is under the comfort line. */
  readonly isThin: (have: number, limit: number) => boolean
  /** `ringing A → B`: the check as the report names it, by station ids. */
  readonly text: (check: CheckOf<K>) => string
  /** The call that it is about: the set of `from` or `to` whose figure it is stands in `where`. */
  readonly call: (check: CheckOf<K>) => { readonly from: string; readonly to: string }
  readonly where: (check: CheckOf<K>) => string
  /** Whether the supply feeds it, so that the wire to the supply counts too. */
  readonly isFed: boolean
}

/** ln (have / need), where nothing needed is always met. */
const ratioNepers = (have: number, need: number): number =>
  need <= 0 ? Number.POSITIVE_INFINITY : Math.log(Math.max(have, 0) / need)

/** Every kind of check, in the order in which a tie between them is settled. */
export const CHECKS: { readonly [K in CheckKind]: Trade<K> } = {
  loop: {
    each: eachLoop,
    row: (from, to, station, mA, minMA) => ({ call: [from, to], station, mA, minMA }),
    named: ({ call, station }) => ({ kind: 'loop', call, station }),
    have: ({ mA }) => mA,
    limit: ({ minMA }) => minMA,
    spare: ratioNepers,
    isThin: (mA, minMA) => mA < COMFORT.loopRatio * minMA,
    text: ({ call, station }) => `loop ${call[0]} – ${call[1]} at ${station}`,
    call: ({ call, station }) => ({ from: station, to: call[0] === station ? call[1] : call[0] }),
    where: ({ station }) => station,
    isFed: true,
  },
  ringing: {
    each: eachRinging,
    row: (from, to, _, volts, minVolts) => ({ from, to, volts, minVolts }),
    named: ({ from, to }) => ({ kind: 'ringing', from, to }),
    have: ({ volts }) => volts,
    limit: ({ minVolts }) => minVolts,
    spare: ratioNepers,
    isThin: (volts, minVolts) => volts < COMFORT.ringRatio * minVolts,
    text: ({ from, to }) => `ringing ${from} → ${to}`,
    call: ({ from, to }) => ({ from, to }),
    where: ({ to }) => to,
    isFed: false,
  },
  voice: {
    each: eachVoice,
    row: (from, to, _, lossDb, maxDb) => ({ from, to, lossDb, maxDb }),
    named: ({ from, to }) => ({ kind: 'voice', from, to }),
    have: ({ lossDb }) => lossDb,
    limit: ({ maxDb }) => maxDb,
    spare: (lossDb, maxDb) => (maxDb - lossDb) / DB_PER_NEPER,
    isThin: (lossDb, maxDb) => lossDb > maxDb - COMFORT.voiceDb,
    text: ({ from, to }) => `voice ${from} → ${to}`,
    call: ({ from, to }) => ({ from, to }),
    where: ({ to }) => to,
    isFed: false,
  },
}

export const CHECK_KINDS = Object.keys(CHECKS) as readonly CheckKind[]

/** The trade of a kind that is known only at run time. The cast is sound: a check or a row is only ever handed to its own kind's. */
export const tradeOf = <K extends CheckKind>(kind: K): Trade<K> => CHECKS[kind] as unknown as Trade<K>
