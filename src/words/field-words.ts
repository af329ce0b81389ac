import type { Explanation, Oddity } from '../field/explain'
import type { What } from '../field/probe'
import type { Tongue } from './tongue'
import { formatOhms } from './units'

/** A reading with its unit, to as many figures as a meter in the field tells. */
export function readingWords(what: What, value: number): string {
  switch (what) {
    case 'loopOhms':
      return value < 1e4 ? formatOhms(value) : `${figures(value / 1000)} kΩ`
    case 'kOhms':
      return value < 1e4 ? `${figures(value)} kΩ` : `${figures(value / 1000)} MΩ`
    case 'nanoF':
      return `${figures(value)} nF`
    case 'ringVolts':
      return `${figures(value)} V`
    case 'mA':
      return `${figures(value)} mA`
    case 'lossDb':
      return `${value.toFixed(1)} dB`
  }
}

const figures = (value: number): string =>
  String(Number(value < 1000 ? value.toPrecision(3) : value.toFixed(0)))

const SAY: {
  readonly [C in Explanation['code']]: (why: Extract<Explanation, { code: C }>, say: Tongue) => string
} = {
  'bad-splice': ({ ohms }) =>
    Number.isFinite(ohms) ? `a bad splice of ${formatOhms(ohms)}` : 'a bad splice',
  'more-wire': ({ wireM }, { length }) => `${length(wireM)} more wire than you say`,
  'less-wire': ({ wireM }, { length }) => `${length(wireM)} less wire than you say`,
  warmer: ({ byC }, { tempStep }) => `wire ${tempStep(Math.round(byC))} warmer than you say`,
  colder: ({ byC }, { tempStep }) => `wire ${tempStep(Math.round(byC))} colder than you say`,
  touching: ({ afterM }, { length }) => `wires that touch ${length(afterM)} from the meter`,
  broken: ({ afterM }, { length }) =>
    afterM > 0 ? `a wire that is broken ${length(afterM)} from the meter` : 'a broken wire',
  leak: ({ ohms }) => `one leak of ${readingWords('kOhms', ohms / 1000)}`,
  wetter: () => 'wire or splices wetter than you say',
  drier: () => 'wire drier than you say',
  'not-joined': () => 'wires that are not joined at the far end',
  'load-on-line': () => 'a telephone or a branch that is still on the line',
  'weak-source': () => 'a weak source at the far end',
  'strong-source': () => 'a source stronger than the catalog has it',
  'other-wire': () => 'wire of another kind or lot than the catalog has',
  meter: () => 'a slip of the meter or of the pen',
}

/** What would explain an odd reading, in words. */
export const explanationWords = (why: Explanation, say: Tongue): string =>
  (SAY[why.code] as (why: Explanation, say: Tongue) => string)(why, say)

/** The most that is listed: who reads more looks for himself. */
const LISTED = 3

/** `12 Ω more than the other readings lead one to expect: a bad splice of 12 Ω, or 90 m more wire than you say.` */
export function odditySentence({ what, expected, read, because }: Oddity, say: Tongue): string {
  const reasons = because.slice(0, LISTED).map((why) => explanationWords(why, say))
  const last = reasons.length > 1 ? `, or ${reasons.at(-1)}` : ''
  const first = reasons.length > 1 ? reasons.slice(0, -1) : reasons
  return `${differenceWords(what, expected, read)}: ${first.join(', ')}${last}.`
}

function differenceWords(what: What, expected: number, read: number): string {
  const word = read > expected ? 'more' : 'less'
  const apart = Math.abs(read - expected)
  return expected > 0 && apart < 3 * expected
    ? `${readingWords(what, apart)} ${word} than the ${readingWords(what, expected)} that is expected`
    : `${readingWords(what, read)} where ${readingWords(what, expected)} is expected`
}
