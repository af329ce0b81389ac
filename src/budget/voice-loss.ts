import type { CircuitModel } from './circuit-model'
import type { Conditions } from './conditions'
import { onHookSiemens } from './ringer'
import type { VoiceRow } from './rows'
import { portOfEachSet } from './supply-ports'
import { type Column, terminalsOf } from './terminals'

export const VOICE_HZ = 1000

/** A loss that no figure needs to tell apart from silence, dB; it keeps infinity out of the report. */
const SILENCE_DB = 9999

/**
 * Insertion loss at 1 kHz between each two sets, dB, every other set on hook.
 *
 * With source and load resistances Za, Zb and the transfer impedance Z'ab of the network they both hang on, the loss
 * 20 log ((Zb / (Za + Zb)) / |Vb|) is 20 log (Za Zb / ((Za + Zb) |Z'ab|)): the same both ways, by reciprocity, unless a set presents
 * something else while its button is pressed.
 *
 * A unit with ports adds its own loss between sets on different ports.
 */
export function voiceRows(model: CircuitModel, conditions: Conditions, hz = VOICE_HZ): VoiceRow[] {
  const throughUnitDb = model.supply?.supply.insertionDb ?? 0
  const portOf = portOfEachSet(model)
  const { sets, stations } = model
  const terminals = terminalsOf(model, conditions, hz)
  // What going off hook changes at each set: the speech circuit in place of the ringer.
  const lifted = sets.map(({ node, set }) => {
    const { acOhms, speakAcOhms = acOhms } = set.offHook
    const ringer = onHookSiemens(set, hz)
    const terminal = terminals.terminalOfNode[node]!
    const seen = terminals.column(terminal)
    const at = (ohms: number): Lifted => ({ terminal, seen, ohms, re: 1 / ohms - ringer.re, im: -ringer.im })
    const listening = at(acOhms)
    return { listening, speaking: speakAcOhms === acOhms ? listening : at(speakAcOhms) }
  })
  const wireDb = (talker: Lifted, listener: Lifted): number => {
    const { ohms: za } = talker
    const { ohms: zb } = listener
    return 20 * Math.log10((za * zb) / ((za + zb) * transferOhm(talker, listener)))
  }
  const rows: VoiceRow[] = []
  for (let i = 0; i < sets.length; i++) {
    for (let j = i + 1; j < sets.length; j++) {
      const [one, other] = [lifted[i]!, lifted[j]!]
      const unitDb = portOf[i] === portOf[j] ? 0 : throughUnitDb
      const there = wireDb(one.speaking, other.listening)
      // Without a button to press it is the same both ways, by reciprocity.
      const isMutual = one.speaking === one.listening && other.speaking === other.listening
      const back = isMutual ? there : wireDb(other.speaking, one.listening)
      const heardDb = (db: number) => (Number.isNaN(db) ? SILENCE_DB : Math.min(db + unitDb, SILENCE_DB))
      const maxDb = Math.min(sets[i]!.set.maxLossDb, sets[j]!.set.maxLossDb)
      const from = stations[sets[i]!.node]!
      const to = stations[sets[j]!.node]!
      rows.push(
        { from, to, lossDb: heardDb(there), maxDb },
        { from: to, to: from, lossDb: heardDb(back), maxDb },
      )
    }
  }
  return rows
}

/** A set off hook: where it is, what is seen from there, and the admittance that it adds, S. */
interface Lifted {
  readonly terminal: number
  readonly seen: Column
  /** What it presents, listening or speaking, Ω. */
  readonly ohms: number
  readonly re: number
  readonly im: number
}

/** |Z'ab| = |Zab / ((1 + Zaa ya)(1 + Zbb yb) − Zab² ya yb)|, Ω: written out, since every pair of sets asks for it. */
function transferOhm(a: Lifted, b: Lifted): number {
  const abRe = a.seen.re[b.terminal]!
  const abIm = a.seen.im[b.terminal]!
  const aaRe = a.seen.re[a.terminal]!
  const aaIm = a.seen.im[a.terminal]!
  const bbRe = b.seen.re[b.terminal]!
  const bbIm = b.seen.im[b.terminal]!
  const pRe = 1 + aaRe * a.re - aaIm * a.im
  const pIm = aaRe * a.im + aaIm * a.re
  const qRe = 1 + bbRe * b.re - bbIm * b.im
  const qIm = bbRe * b.im + bbIm * b.re
  const uRe = abRe * a.re - abIm * a.im
  const uIm = abRe * a.im + abIm * a.re
  const vRe = abRe * b.re - abIm * b.im
  const vIm = abRe * b.im + abIm * b.re
  const dRe = pRe * qRe - pIm * qIm - (uRe * vRe - uIm * vIm)
  const dIm = pRe * qIm + pIm * qRe - (uRe * vIm + uIm * vRe)
  return Math.hypot(abRe, abIm) / Math.hypot(dRe, dIm)
}
