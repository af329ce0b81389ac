import type { StationId } from './id'
import type { Circuit } from './plan'

/** One turn of a code: a long ring or a short one. */
export type Ring = 'long' | 'short'

/** Rings everybody of the line: no station has it for itself. */
export const ALL_RING: readonly Ring[] = ['long']

/** A code has two rings at the least: one short ring by itself is also what a passing thunderstorm rings. */
const FEWEST_RINGS = 2

/** The code of a place in the order, from 0: all codes of two rings, then all of three, and so on; short before long. */
export function ringCode(index: number): readonly Ring[] {
  let rings = FEWEST_RINGS
  let before = 0
  while (index - before >= 2 ** rings) {
    before += 2 ** rings
    rings += 1
  }
  const which = index - before
  return Array.from({ length: rings }, (_, i) => ((which >> (rings - 1 - i)) & 1 ? 'long' : 'short'))
}

/**
 * The ring of each station of a party line, by its place among the sets of the circuit: a set that is added later changes nobody's code.
 *
 * Source: code ringing by long and short rings tells the parties of a line apart: Cyclopedia of Telephony and Telegraphy, vol. 1 (American
 * School of Correspondence, 1911), ch. 17; which code is whose is each line's own affair.
 */
export const ringCodes = ({ sets }: Pick<Circuit, 'sets'>): ReadonlyMap<StationId, readonly Ring[]> =>
  new Map([...sets.keys()].map((station, i) => [station, ringCode(i)]))
