import type { CircuitModel } from './circuit-model'
import type { Conditions } from './conditions'
import { ringingRows } from './ringing'
import type { RingingRow, VoiceRow } from './rows'
import { judge, leastOf } from './verdict'
import { voiceRows } from './voice-loss'

/** A handset of no ohms is taken to have this much, so that its current stays finite. */
const LEAST_OHM = 1e-3

/** What is left of ringing with one handset off hook. */
export interface LeftOffHook {
  /** Station of the handset. */
  readonly left: string
  /** The bell that then fares worst against its least volts; null where nothing rings. */
  readonly ringing: RingingRow | null
  /** Whether every other bell still rings. */
  readonly ok: boolean
}

/**
 * For each set in turn: ringing with its handset left lying. Its `dcOhms` lie across the pair, its own bell is cut off.
 */
export function leftOffHookRows(model: CircuitModel, conditions: Conditions): LeftOffHook[] {
  return model.sets.map((lying, index) => {
    const { ringer: _, ...mute } = lying.set
    const ohms = Math.max(LEAST_OHM, lying.set.offHook.dcOhms)
    // What lies across the pair is a set of its own, so that a crank beside it turns as ever.
    const { generator: __, ...across } = { ...mute, ringer: { ohms, minVolts: 0 } }
    const left = model.stations[lying.node]!
    const sets = [
      ...model.sets.map((each, k) => (k === index ? { ...lying, set: mute } : each)),
      { ...lying, set: across },
    ]
    const rows = ringingRows({ ...model, sets }, conditions).filter(({ to }) => to !== left)
    const ringing = leastOf('ringing', rows)?.row ?? null
    return { left, ringing, ok: ringing === null || judge('ringing', ringing) !== 'fails' }
  })
}

/** The faintest pair with every set off hook, all of them listening; null where there are no two. */
export function crowdRow(model: CircuitModel, conditions: Conditions): VoiceRow | null {
  // A bell of just the speech circuit's ohms is a set that listens.
  const sets = model.sets.map(({ node, set }) => ({
    node,
    set: { ...set, ringer: { ohms: set.offHook.acOhms, minVolts: 0 } },
  }))
  return leastOf('voice', voiceRows({ ...model, sets }, conditions))?.row ?? null
}
