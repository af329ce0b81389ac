import type { CircuitModel } from './circuit-model'
import type { Conditions } from './conditions'
import { portsOf } from './ports'
import { onHookSiemens } from './ringer'
import type { VoiceRow } from './rows'

export const VOICE_HZ = 1000

/** A loss that no figure needs to tell apart from silence, dB; it keeps infinity out of the report. */
const SILENCE_DB = 9999

/**
 * Insertion loss at 1 kHz between each two sets, dB, every other set on hook.
 *
 * With source and load resistances Za, Zb and the transfer impedance Z'ab of the network they both hang on, the loss
 * 20 log ((Zb / (Za + Zb)) / |Vb|) is 20 log (Za Zb / ((Za + Zb) |Z'ab|)): the same both ways, by reciprocity.
 *
 * @param extraDb loss added between two sets (by index), such as that of a ringdown unit
 */
export function voiceRows(
  model: CircuitModel,
  conditions: Conditions,
  extraDb: (a: number, b: number) => number = () => 0,
  hz = VOICE_HZ,
): VoiceRow[] {
  const { sets, stations } = model
  const ports = portsOf(model, conditions, hz)
  const { count, re, im } = ports
  // What going off hook changes at each set: the speech circuit in place of the ringer.
  const offHook = sets.map(({ node, set }) => {
    const ringer = onHookSiemens(set, hz)
    return { port: ports.portOfNode[node]!, re: 1 / set.offHook.acOhms - ringer.re, im: -ringer.im }
  })
  const rows: VoiceRow[] = []
  for (let i = 0; i < sets.length; i++) {
    for (let j = i + 1; j < sets.length; j++) {
      const a = offHook[i]!
      const b = offHook[j]!
      const aa = a.port * count + a.port
      const bb = b.port * count + b.port
      const ab = a.port * count + b.port
      // Z'ab = Zab / ((1 + Zaa ya)(1 + Zbb yb) − Zab² ya yb)
      const pRe = 1 + re[aa]! * a.re - im[aa]! * a.im
      const pIm = re[aa]! * a.im + im[aa]! * a.re
      const qRe = 1 + re[bb]! * b.re - im[bb]! * b.im
      const qIm = re[bb]! * b.im + im[bb]! * b.re
      const uRe = re[ab]! * a.re - im[ab]! * a.im
      const uIm = re[ab]! * a.im + im[ab]! * a.re
      const vRe = re[ab]! * b.re - im[ab]! * b.im
      const vIm = re[ab]! * b.im + im[ab]! * b.re
      const dRe = pRe * qRe - pIm * qIm - (uRe * vRe - uIm * vIm)
      const dIm = pRe * qIm + pIm * qRe - (uRe * vIm + uIm * vRe)
      const transferOhm = Math.hypot(re[ab]!, im[ab]!) / Math.hypot(dRe, dIm)

      const za = sets[i]!.set.offHook.acOhms
      const zb = sets[j]!.set.offHook.acOhms
      const loss = 20 * Math.log10((za * zb) / ((za + zb) * transferOhm)) + extraDb(i, j)
      const lossDb = Math.min(loss, SILENCE_DB)
      const maxDb = Math.min(sets[i]!.set.maxLossDb, sets[j]!.set.maxLossDb)
      const from = stations[sets[i]!.node]!
      const to = stations[sets[j]!.node]!
      rows.push({ from, to, lossDb, maxDb }, { from: to, to: from, lossDb, maxDb })
    }
  }
  return rows
}
