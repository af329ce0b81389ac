import type { CircuitModel, ModelSet } from './circuit-model'
import { add, type Complex, divide, modulus, multiply, subtract, ZERO } from './complex'
import type { Conditions } from './conditions'
import { onHookSiemens } from './ringer'
import type { TakeFigure } from './rows'
import { portOfEachSet, supplyPorts } from './supply-ports'
import { terminalsOf } from './terminals'
import { isSwitchboard } from './trunk-ends'

export const VOICE_HZ = 1000

/** A loss that no figure needs to tell apart from silence, dB; it keeps infinity out of the report. */
const SILENCE_DB = 9999

/**
 * Insertion loss at 1 kHz between each two sets of a circuit, dB, every other set on hook.
 *
 * A call between two ports of a board or an exchange joins just those two; the others are cut off. A unit with ports adds its own loss
 * between sets on different ports, and repeating coils theirs to every call.
 */
export function eachVoice(
  model: CircuitModel,
  conditions: Conditions,
  take: TakeFigure,
  hz = VOICE_HZ,
): void {
  const lossDb = isSwitchboard(model.supply?.supply)
    ? lossOverPorts(model, conditions, hz)
    : lossBetweenSets(model, conditions, hz)
  const throughUnitDb = model.supply?.supply.insertionDb ?? 0
  const portOf = portOfEachSet(model)
  const { sets, stations, coils } = model
  for (let i = 0; i < sets.length; i++) {
    for (let j = i + 1; j < sets.length; j++) {
      const apart = (portOf[i] === portOf[j] ? 0 : throughUnitDb) + (coils?.voiceDb ?? 0)
      const there = lossDb(i, j)
      // Without a button to press it is the same both ways, by reciprocity.
      const back = hasButton(sets[i]!) || hasButton(sets[j]!) ? lossDb(j, i) : there
      const maxDb = Math.min(sets[i]!.set.maxLossDb, sets[j]!.set.maxLossDb)
      const [from, to] = [stations[sets[i]!.node]!, stations[sets[j]!.node]!]
      take(from, to, to, heardDb(there + apart), maxDb)
      take(to, from, from, heardDb(back + apart), maxDb)
    }
  }
}

const heardDb = (db: number): number => (Number.isNaN(db) ? SILENCE_DB : Math.min(db, SILENCE_DB))

/** Loss from one set of a circuit to another, by their places among its sets. */
type LossDb = (talker: number, listener: number) => number

const hasButton = ({ set }: ModelSet): boolean =>
  set.offHook.speakAcOhms !== undefined && set.offHook.speakAcOhms !== set.offHook.acOhms

/**
 * The same on a board or an exchange: two sets on one port over that alone, others over the two ports joined at node 0.
 *
 * Two networks joined at one node: Z'ij = Z0i Z0j / (Z00a + Z00b), and Z'ii = Zii − Z0i² / (Z00a + Z00b), by superposition.
 */
function lossOverPorts(model: CircuitModel, conditions: Conditions, hz: number): LossDb {
  const portOf = portOfEachSet(model)
  const places = new Map<number, { readonly seen: SeenFromSets; readonly index: number }>()
  for (const { circuit, setIndices } of supplyPorts(model)) {
    const seen = seenFromSets(circuit, conditions, hz)
    for (const [index, set] of setIndices.entries()) places.set(set, { seen, index })
  }
  return (i, j) => {
    const a = places.get(i)!
    const b = places.get(j)!
    const [one, other] = [a.seen.speaking[a.index]!, b.seen.listening[b.index]!]
    if (portOf[i] === portOf[j]) return a.seen.lossDb(a.index, b.index)
    const both = add(a.seen.atSupply, b.seen.atSupply)
    const joined = (set: Lifted): Lifted => ({
      ...set,
      seen: subtract(set.seen, divide(multiply(set.toSupply, set.toSupply), both)),
    })
    const { re, im } = divide(multiply(one.toSupply, other.toSupply), both)
    return lossDbOf(joined(one), joined(other), re, im)
  }
}

/**
 * Loss of the wire between each two sets, dB, every other set on hook.
 *
 * With source and load resistances Za, Zb and the transfer impedance Z'ab of the network they both hang on, the loss
 * 20 log ((Zb / (Za + Zb)) / |Vb|) is 20 log (Za Zb / ((Za + Zb) |Z'ab|)): the same both ways, by reciprocity, unless a set presents
 * something else while its button is pressed.
 */
export const lossBetweenSets = (model: CircuitModel, conditions: Conditions, hz: number): LossDb =>
  seenFromSets(model, conditions, hz).lossDb

/** A set off hook: the impedance seen from it and to the supply, Ω, what it presents, Ω, and the admittance that lifting it adds, S. */
interface Lifted {
  readonly seen: Complex
  readonly toSupply: Complex
  readonly ohms: number
  readonly adds: Complex
}

interface SeenFromSets {
  readonly speaking: readonly Lifted[]
  readonly listening: readonly Lifted[]
  readonly lossDb: LossDb
  /** Impedance at the supply, Ω; 0 where there is none. */
  readonly atSupply: Complex
}

function seenFromSets(model: CircuitModel, conditions: Conditions, hz: number): SeenFromSets {
  const { terminalOfNode, column } = terminalsOf(model, conditions, hz)
  const supply = model.supply ? terminalOfNode[model.supply.node]! : undefined
  const places = model.sets.map(({ node }) => terminalOfNode[node]!)
  const at = (a: number, b: number): Complex => {
    const { re, im } = column(a)
    return { re: re[b]!, im: im[b]! }
  }
  // What going off hook changes at a set: the speech circuit in place of the ringer.
  const lifted = (k: number, ohms: number): Lifted => {
    const ringer = onHookSiemens(model.sets[k]!.set, hz)
    return {
      seen: at(places[k]!, places[k]!),
      toSupply: supply === undefined ? ZERO : at(places[k]!, supply),
      ohms,
      adds: { re: 1 / ohms - ringer.re, im: -ringer.im },
    }
  }
  const listening = model.sets.map(({ set }, k) => lifted(k, set.offHook.acOhms))
  const speaking = model.sets.map((each, k) =>
    hasButton(each) ? lifted(k, each.set.offHook.speakAcOhms!) : listening[k]!,
  )
  const columns = places.map(column)
  return {
    listening,
    speaking,
    lossDb: (i, j) => {
      const { re, im } = columns[i]!
      const at = places[j]!
      return lossDbOf(speaking[i]!, listening[j]!, re[at]!, im[at]!)
    },
    atSupply: supply === undefined ? ZERO : at(supply, supply),
  }
}

/** @param abRe with `abIm` the transfer impedance between the two, Ω */
const lossDbOf = (a: Lifted, b: Lifted, abRe: number, abIm: number): number =>
  20 * Math.log10((a.ohms * b.ohms) / ((a.ohms + b.ohms) * transferOhm(a, b, abRe, abIm)))

/** |Z'ab| = |Zab / ((1 + Zaa ya)(1 + Zbb yb) − Zab² ya yb)|, Ω: written out, since every pair of sets asks for it. */
function transferOhm(a: Lifted, b: Lifted, abRe: number, abIm: number): number {
  const { seen: aa, adds: ya } = a
  const { seen: bb, adds: yb } = b
  const pRe = 1 + aa.re * ya.re - aa.im * ya.im
  const pIm = aa.re * ya.im + aa.im * ya.re
  const qRe = 1 + bb.re * yb.re - bb.im * yb.im
  const qIm = bb.re * yb.im + bb.im * yb.re
  const uRe = abRe * ya.re - abIm * ya.im
  const uIm = abRe * ya.im + abIm * ya.re
  const vRe = abRe * yb.re - abIm * yb.im
  const vIm = abRe * yb.im + abIm * yb.re
  const dRe = pRe * qRe - pIm * qIm - (uRe * vRe - uIm * vIm)
  const dIm = pRe * qIm + pIm * qRe - (uRe * vIm + uIm * vRe)
  return modulus(abRe, abIm) / modulus(dRe, dIm)
}
