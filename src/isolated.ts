/** Overrides, embeddings and isolates that a name may bring along, open or closed: Unicode Standard Annex 9, section 2. */
const CONTROLS = /[\u202a-\u202e\u2066-\u2069]/g
/** What ends a paragraph, and with it every isolate. */
const BREAKS = /[\p{Cc}\p{Zl}\p{Zp}]+/gu
/** Letters that run from right to left, their digits and marks: types R, AL and AN of the same annex, by their blocks. */
const RIGHT_TO_LEFT = /[\u0590-\u08ff\u200f\ufb1d-\ufdff\ufe70-\ufeff\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u
const FIRST_STRONG_ISOLATE = '\u2068'
const POP_DIRECTIONAL_ISOLATE = '\u2069'

/** A name without what would turn the text around it: for an element of its own, such as `<bdi>`. */
export const undirected = (name: string): string => name.replace(CONTROLS, '').replace(BREAKS, ' ')

/**
 * A name as it stands within other text, so that neither turns the other round: `14, 763 m out` after a name in Arabic letters
 * stays as it is. A name with no letter from right to left stands bare, for it can turn nothing in a text that runs from
 * left to right, as all of ours do.
 *
 * Source: Unicode Standard Annex 9, section 2.4 (FSI … PDI), and W3C, Inline markup and bidirectional text.
 */
export function isolated(name: string): string {
  const plain = undirected(name)
  return RIGHT_TO_LEFT.test(plain) ? `${FIRST_STRONG_ISOLATE}${plain}${POP_DIRECTIONAL_ISOLATE}` : plain
}
