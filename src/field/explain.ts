import type { What } from './probe'
import type { Expected, Reading } from './readings'

/** What would make a reading what it is. */
export type Explanation =
  /** So many ohms more in one place. */
  | { readonly code: 'bad-splice'; readonly ohms: number }
  /** More wire than is said, or less, m. */
  | { readonly code: 'more-wire' | 'less-wire'; readonly wireM: number }
  | { readonly code: 'warmer' | 'colder'; readonly byC: number }
  /** The wires touch after so much wire, or the wire ends there, m from the meter. */
  | { readonly code: 'touching' | 'broken'; readonly afterM: number }
  /** Wires that should be apart have this between them, Ω. */
  | { readonly code: 'leak'; readonly ohms: number }
  | {
      readonly code:
        | 'wetter'
        | 'drier'
        | 'not-joined'
        | 'load-on-line'
        | 'weak-source'
        | 'strong-source'
        | 'meter'
        | 'other-wire'
    }

/** A reading that lies farther from what was expected than chance would have it: it is asked about, and teaches nothing. */
export interface OddReading {
  readonly reading: Reading
  readonly expected: Expected
  /** How far off it is, in standard deviations. */
  readonly sigmas: number
}

/** A reading to be asked about: of all that is read the other way round, likeliest explanation first. */
export interface Oddity {
  readonly record: string
  readonly line: string
  readonly wireM: number
  readonly what: What
  readonly expected: number
  readonly read: number
  /** How far off it is, in standard deviations of what was expected. */
  readonly sigmas: number
  readonly because: readonly Explanation[]
}

/** Laid wire differs from what is said of it by so much, standard deviation, as a part of it: half of the handbook's slack. Allowance. */
const LENGTH_SIGMA = 0.1
const TEMP_SIGMA_C = 5

interface Guess {
  readonly explanation: Explanation
  /** The less, the likelier: half the square of how far out of the usual it is. */
  readonly cost: number
}

const usual = (cost: number, explanation: Explanation): Guess => ({ explanation, cost })
const outBy = (amount: number, sigma: number) => (amount / sigma) ** 2 / 2

/** What would explain an odd reading, the likeliest first. @param aheadM wire that the meter looked into, m */
export function explained(
  { reading, expected, sigmas }: OddReading,
  aheadM: number,
  tempCoeffPerC: number,
): Oddity {
  const guesses = GUESSES[reading.what]({
    expected: expected.value,
    read: reading.value,
    aheadM,
    tempCoeffPerC,
    far: reading.far,
  })
  return {
    record: reading.id,
    line: reading.line,
    wireM: reading.wireM,
    what: reading.what,
    expected: expected.value,
    read: reading.value,
    sigmas,
    because: guesses.sort((a, b) => a.cost - b.cost).map(({ explanation }) => explanation),
  }
}

interface Odd {
  readonly expected: number
  readonly read: number
  readonly aheadM: number
  readonly tempCoeffPerC: number
  readonly far: 'open' | 'short' | 'set'
}

const METER = usual(6, { code: 'meter' })
const OTHER_WIRE = usual(5, { code: 'other-wire' })

/** Ohms into a loop that is joined at the far end: in proportion to the wire. */
function loopGuesses({ expected, read, aheadM, tempCoeffPerC }: Odd): Guess[] {
  const more = read - expected
  const wireM = (Math.abs(more) / expected) * aheadM
  const byC = Math.abs(more / expected / (tempCoeffPerC || 1e-9))
  const temp =
    byC < 60 ? [usual(1 + outBy(byC, TEMP_SIGMA_C), { code: more > 0 ? 'warmer' : 'colder', byC })] : []
  const length = usual(outBy(wireM, LENGTH_SIGMA * aheadM), {
    code: more > 0 ? 'more-wire' : 'less-wire',
    wireM,
  })
  return more > 0
    ? [
        usual(0.5, { code: 'bad-splice', ohms: more }),
        length,
        ...temp,
        OTHER_WIRE,
        ...(read > 20 * expected
          ? [usual(1, { code: 'broken', afterM: 0 }), usual(1.5, { code: 'not-joined' })]
          : []),
        METER,
      ]
    : [
        usual(3, { code: 'touching', afterM: Math.max(0, aheadM - wireM) }),
        length,
        ...temp,
        OTHER_WIRE,
        METER,
      ]
}

/** Ohms between wires that are apart. */
function insulationGuesses({ expected, read, far, ...odd }: Odd, unit: number): Guess[] {
  if (far === 'short') return loopGuesses({ expected: expected * unit, read: read * unit, far, ...odd })
  if (read > expected) return [usual(1, { code: 'drier' }), METER]
  // The leak that lies beside what was expected.
  const ohms = unit / (1 / Math.max(read, 1e-9) - 1 / expected)
  return [
    usual(ohms > 5000 ? 1 : 3, { code: 'wetter' }),
    usual(2, { code: 'leak', ohms }),
    ...(far === 'open' ? [usual(4, { code: 'load-on-line' })] : []),
    METER,
  ]
}

const GUESSES: Readonly<Record<What, (odd: Odd) => Guess[]>> = {
  loopOhms: (odd) => (odd.far === 'short' ? loopGuesses(odd) : insulationGuesses(odd, 1)),
  kOhms: (odd) => insulationGuesses(odd, 1000),
  nanoF: ({ expected, read, aheadM }) => {
    const wireM = Math.abs(read / expected - 1) * aheadM
    const length = outBy(wireM, LENGTH_SIGMA * aheadM)
    return read < expected
      ? [
          usual(2, { code: 'broken', afterM: (read / expected) * aheadM }),
          usual(3, { code: 'drier' }),
          usual(length, { code: 'less-wire', wireM }),
          METER,
        ]
      : [
          usual(2, { code: 'wetter' }),
          usual(2.5, { code: 'load-on-line' }),
          usual(length, { code: 'more-wire', wireM }),
          METER,
        ]
  },
  ringVolts: ({ expected, read }) =>
    read < expected
      ? [
          usual(1, { code: 'weak-source' }),
          usual(2, { code: 'load-on-line' }),
          usual(3, { code: 'wetter' }),
          METER,
        ]
      : [usual(1, { code: 'strong-source' }), METER],
  mA: ({ expected, read }) =>
    read < expected
      ? [usual(1, { code: 'weak-source' }), usual(2, { code: 'bad-splice', ohms: Number.NaN }), METER]
      : [usual(1, { code: 'strong-source' }), METER],
  lossDb: ({ expected, read }) =>
    read > expected
      ? [usual(1, { code: 'wetter' }), usual(2, { code: 'load-on-line' }), METER]
      : [usual(1, { code: 'drier' }), METER],
}
