import type { Trouble } from './observation'

/** Kinds of fault as the contract names them. */
export const FAULT_KINDS = ['short', 'open', 'leak', 'resistance'] as const
export type FaultKind = (typeof FAULT_KINDS)[number]

/** A kind of fault with all the ohms that it may have of its own. */
export interface Hypothesis extends Trouble {
  readonly kind: FaultKind
  /** How often a fault is of this kind, before anything is known. */
  readonly chance: number
  /** Logarithms of its own ohms, evenly apart, and the chance of each stretch between two; one value for a fault without ohms. */
  readonly lnOhms: Float64Array
  readonly chances: Float64Array
}

/** Logarithms of a fault's ohms stand so far apart: between two what is read is taken to change in proportion. */
const STEP = 0.25

/** @param density of the logarithm of the ohms, as far as one matters to another */
function ohmic(fromOhm: number, toOhm: number, density: (lnOhm: number) => number) {
  const [low, high] = [Math.log(fromOhm), Math.log(toOhm)]
  const stretches = Math.ceil((high - low) / STEP)
  const lnOhms = Float64Array.from({ length: stretches + 1 }, (_, k) => low + ((high - low) * k) / stretches)
  const raw = Float64Array.from({ length: stretches }, (_, k) => density((lnOhms[k]! + lnOhms[k + 1]!) / 2))
  const sum = raw.reduce((total, each) => total + each, 0)
  return { lnOhms, chances: raw.map((each) => each / sum) }
}

/** Wires that touch have an ohm or so between them: 95 of a hundred from 0.04 to 23 Ω. Allowance. */
const touching = (lnOhm: number) => Math.exp(-(lnOhm ** 2) / 2 / 1.6 ** 2)
const any = () => 1

/**
 * What can be amiss, and how often. Allowances: of complete failures the handbooks name opens and shorts as the commonest (US Army
 * subcourse SS04377, pp. 2–3), and give no figures.
 */
export const HYPOTHESES: readonly Hypothesis[] = [
  { kind: 'short', element: 'across', toEarth: false, chance: 0.3, ...ohmic(0.01, 100, touching) },
  {
    kind: 'open',
    element: 'broken',
    toEarth: false,
    chance: 0.3,
    lnOhms: Float64Array.of(0),
    chances: Float64Array.of(1),
  },
  { kind: 'leak', element: 'across', toEarth: false, chance: 0.14, ...ohmic(30, 2e6, any) },
  {
    kind: 'leak',
    element: 'across',
    toEarth: true,
    chance: 0.06,
    lnOhms: Float64Array.of(0),
    chances: Float64Array.of(1),
  },
  { kind: 'resistance', element: 'along', toEarth: false, chance: 0.2, ...ohmic(5, 1e6, any) },
]

/** How often nothing is wrong after all, and how often there is more than one fault, against all single ones. Allowances. */
export const NOTHING_WRONG = 0.03
export const SEVERAL = 0.02
