import { STEP_NEPERS } from '../field/gauge'
import type { Bench, Observation, Seen, Witness } from './observation'
import type { Hypothesis } from './trouble'
import type { Way } from './ways'

/** One way of taking the evidence, with all that is held against it. */
export interface Setup {
  readonly way: Way
  readonly observations: readonly Observation[]
  readonly witnesses: readonly Witness[]
}

/** What would be read with one kind of fault at one place. */
export interface Glimpse {
  /** Which observations bear such a fault. */
  readonly borne: readonly number[]
  /** By ohms, then by observation: what is read. */
  readonly values: Float64Array
  /** By every fourth of the ohms, by observation, then by figure: slopes. */
  readonly slopes: Float64Array
  /** By every fourth of the ohms: logarithm of the chance of the witnesses. */
  readonly witnessed: Float64Array
}

/** What would be read with the fault at one place, by the numbers of setup and hypothesis; reckoned when first asked for. */
export interface Spot {
  readonly wireM: number
  readonly seen: (setup: number, hypothesis: number) => Glimpse
}

/** Slopes and witnesses change slowly with a fault's ohms: they are reckoned at every so many of them. */
export const COARSE = 4

const coarseCount = (count: number) => Math.floor((count - 1) / COARSE) + 2

/** @param side which piece of a line is meant where one ends and another begins, m */
export function spotAt(
  { figures, hypotheses }: Bench,
  setups: readonly Setup[],
  line: string,
  wireM: number,
  side: number,
): Spot {
  const instruments = setups.map(() => new Map<number, Seen>())
  const glimpse = (s: number, hypothesis: Hypothesis): Glimpse => {
    const { observations, witnesses } = setups[s]!
    const seenBy = (k: number): Seen => {
      const known = instruments[s]!.get(k) ?? observations[k]!.at(line, wireM, side)
      instruments[s]!.set(k, known)
      return known
    }
    const { lnOhms } = hypothesis
    const borne = observations.flatMap((each, k) => (each.bears(hypothesis) ? [k] : []))
    const n = borne.length
    const values = new Float64Array(lnOhms.length * n)
    const coarse = coarseCount(lnOhms.length)
    const slopes = new Float64Array(coarse * n * figures.length)
    const witnessed = new Float64Array(coarse)
    const ohmsAt = (c: number) => Math.exp(lnOhms[Math.min(c * COARSE, lnOhms.length - 1)]!)
    for (const [row, k] of borne.entries()) {
      const seen = seenBy(k)
      for (const [u, lnOhm] of lnOhms.entries()) values[u * n + row] = seen.first(hypothesis, Math.exp(lnOhm))
      if (figures.length === 0) continue
      for (let c = 0; c < coarse; c++) {
        const all = seen.all(hypothesis, ohmsAt(c))
        for (let f = 0; f < figures.length; f++)
          slopes[(c * n + row) * figures.length + f] = (all[f + 1]! - all[0]!) / STEP_NEPERS
      }
    }
    for (const witness of witnesses) {
      const told = witness.at(line, wireM, side)
      for (let c = 0; c < coarse; c++) witnessed[c]! += told(hypothesis, ohmsAt(c))
    }
    return { borne, values, slopes, witnessed }
  }
  const glimpses = setups.map(() => new Array<Glimpse | undefined>(hypotheses.length))
  return {
    wireM,
    seen: (s, h) => {
      glimpses[s]![h] ??= glimpse(s, hypotheses[h]!)
      return glimpses[s]![h]
    },
  }
}
