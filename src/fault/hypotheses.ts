import type { Known } from './evidence'
import type { FaultKind, Hypothesis, Trouble } from './trouble'

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

const NO_OHMS = { lnOhms: Float64Array.of(0), chances: Float64Array.of(1) }
const ANY_LEAK = ohmic(30, 2e6, any)
/** A wire on the ground: from a bare joint in a puddle to a scratch in dry grass. Allowance. */
const EARTHED = ohmic(3, 2e6, any)

const SHORT = {
  kind: 'short',
  element: 'across',
  toEarth: false,
  chance: 0.3,
  ...ohmic(0.01, 100, touching),
} as const
const OPEN = { kind: 'open', element: 'broken', toEarth: false, chance: 0.3, ...NO_OHMS } as const
const LEAK = { kind: 'leak', element: 'across', toEarth: false, chance: 0.14, ...ANY_LEAK } as const
const EARTH = { kind: 'leak', element: 'across', toEarth: true, chance: 0.06, ...NO_OHMS } as const
const JOINT = {
  kind: 'resistance',
  element: 'along',
  toEarth: false,
  chance: 0.2,
  ...ohmic(5, 1e6, any),
} as const

const besides = (kind: FaultKind, element: Trouble['element'], chance: number): Hypothesis => ({
  kind,
  element,
  toEarth: false,
  chance,
  ...NO_OHMS,
})

/**
 * What can be amiss, and how often. Allowances: of complete failures the handbooks name opens and shorts as the commonest (US Army
 * subcourse SS0437, pp. 2–3), and give no figures. Which wire it is is asked only where one wire was measured against the earth, and
 * whether another circuit has a part in it only where something was said of that: crosses are third of their list, and rarer.
 */
export function hypothesesFor(evidence: readonly Known[]): readonly Hypothesis[] {
  const ofWires = evidence.some((each) => 'wire' in each && each.wire)
  const ofOthers = evidence.some((each) => 'stray' in each)
  const byWire = (['a', 'b'] as const).flatMap((wire): Hypothesis[] => [
    { ...OPEN, wire, chance: 0.35 * OPEN.chance },
    { ...EARTH, ...EARTHED, wire, chance: 0.5 * EARTH.chance },
  ])
  return [
    SHORT,
    LEAK,
    JOINT,
    ...(ofWires ? [{ ...OPEN, chance: 0.3 * OPEN.chance }, ...byWire] : [OPEN, EARTH]),
    ...(ofOthers
      ? [besides('crossed', 'none', 0.06), besides('swapped', 'broken', 0.03), besides('split', 'none', 0.02)]
      : []),
  ]
}

/** How often nothing is wrong after all, and how often there is more than one fault, against all single ones. Allowances. */
export const NOTHING_WRONG = 0.5
export const SEVERAL = 0.02
