import { bad, ok, type Result } from '../problem'

/** A wire hanging between two supports. Heights are reckoned from the first support, m. */
export interface Hanging {
  readonly spanM: number
  /** How much higher the second support is, m. */
  readonly riseM: number
  /** Horizontal part of the tension, the same all along, N. */
  readonly horizontalN: number
  /** c = H / w, m: the height of the lowest point of the whole curve over its directrix. */
  readonly parameterM: number
  /** Where the curve is lowest, from the first support, m; outside 0…span on a steep span. */
  readonly lowestM: number
  /** Greatest depth below the straight line between the supports, measured plumb, m. */
  readonly sagM: number
  /** Length of the wire, m. */
  readonly wireM: number
  /** Tension at the higher support, N: the greatest. */
  readonly maxTensionN: number
}

interface Span {
  readonly spanM: number
  /** How much higher the second support is, m; level where it is left out. */
  readonly riseM?: number
  /** Weight of the wire with whatever hangs on it, N per m of wire. */
  readonly weightNPerM: number
}

const fault = (code: string, message: string) => bad({ code, at: 'span', message })

/**
 * The catenary through two supports at a given horizontal tension.
 *
 * With c = H/w, y = c cosh((x − x₀)/c), x₀ = L/2 − c asinh(h / (2c sinh(L/2c))); length² = (2c sinh(L/2c))² + h²; T = w y.
 * Source: E. J. Routh, A Treatise on Analytical Statics, vol. 1 (2nd ed., 1896), ch. X, "The catenary".
 */
export function hang({
  spanM,
  riseM = 0,
  weightNPerM,
  horizontalN,
}: Span & { readonly horizontalN: number }): Result<Hanging> {
  if (!(spanM > 0)) return fault('span-length', 'A span must be longer than 0 m.')
  if (!(weightNPerM > 0)) return fault('span-weight', 'A hanging wire must weigh more than nothing.')
  if (!(horizontalN > 0)) return fault('span-tension', 'A hanging wire must be under tension.')
  const c = horizontalN / weightNPerM
  const half = spanM / (2 * c)
  if (half > 20) return fault('span-slack', 'At so little tension the wire hangs straight down.')
  const chordless = 2 * c * Math.sinh(half)
  const lowestM = spanM / 2 - c * Math.asinh(riseM / chordless)
  const above = (x: number) => c * Math.cosh((x - lowestM) / c)
  // The wire runs parallel to the straight line where it is farthest below it.
  const deepestM = lowestM + c * Math.asinh(riseM / spanM)
  return ok({
    spanM,
    riseM,
    horizontalN,
    parameterM: c,
    lowestM,
    sagM: Math.max(0, above(0) + (riseM * deepestM) / spanM - above(deepestM)),
    wireM: Math.hypot(chordless, riseM),
    maxTensionN: weightNPerM * Math.max(above(0), above(spanM)),
  })
}

/** Height of a hanging wire over its first support at a distance from it, m. */
export function wireHeightM({ parameterM: c, lowestM }: Hanging, distanceM: number): number {
  // As a product, the difference of two large cosines keeps its digits on a tight wire.
  return 2 * c * Math.sinh((distanceM - 2 * lowestM) / (2 * c)) * Math.sinh(distanceM / (2 * c))
}

/** The catenary through two supports that sags by so much, m: the tension that gives this sag. */
export function hangBySag({ sagM, ...span }: Span & { readonly sagM: number }): Result<Hanging> {
  if (!(sagM > 0)) return fault('span-sag', 'A wire without sag would need a tension without end.')
  const { spanM, riseM = 0, weightNPerM } = span
  // From the parabola's tension: sag times tension hardly changes with tension, so their ratio mends it in a few rounds.
  let horizontalN = (weightNPerM * spanM * Math.hypot(spanM, riseM)) / (8 * sagM)
  let found = hang({ ...span, horizontalN })
  for (let i = 0; i < 60 && found.ok && Math.abs(found.value.sagM / sagM - 1) > 1e-12; i++) {
    horizontalN *= found.value.sagM / sagM
    found = hang({ ...span, horizontalN })
  }
  return found
}

/** How a wire stretches: by pull, and by warmth. */
export interface Stretch {
  /** E·A, N: the pull that would double its length. */
  readonly stiffnessN: number
  /** Linear expansion, 1/°C. */
  readonly expansionPerC: number
}

/**
 * Horizontal tension of a level span at another temperature, or under another load, N.
 *
 * H₂³ + H₂² (EA w₁² L² / 24 H₁² + EA α (t₂ − t₁) − H₁) − EA w₂² L² / 24 = 0, its one positive root.
 * Source: the change-of-state equation of the parabola, as in S. C. Mehta and C. L. Wadhwa's textbooks of electrical power.
 * Range: sag up to a tenth of the span.
 *
 * @param first weight, tension and temperature at which it was strung
 * @param second weight (with ice or wind, else as at first) and temperature to reckon for
 */
export function tensionAfterN(
  spanM: number,
  stretch: Stretch,
  first: { readonly weightNPerM: number; readonly horizontalN: number; readonly tempC: number },
  second: { readonly weightNPerM?: number; readonly tempC: number },
): number {
  const { stiffnessN, expansionPerC } = stretch
  const w2 = second.weightNPerM ?? first.weightNPerM
  const a =
    (stiffnessN * (first.weightNPerM * spanM) ** 2) / (24 * first.horizontalN ** 2) +
    stiffnessN * expansionPerC * (second.tempC - first.tempC) -
    first.horizontalN
  const b = (stiffnessN * (w2 * spanM) ** 2) / 24
  // From above the root the cubic is convex and rising: Newton's steps come down on it and never pass it.
  let h = Math.max(first.horizontalN, Math.cbrt(b) + Math.abs(a))
  for (let i = 0; i < 200; i++) {
    const step = (h * h * (h + a) - b) / (h * (3 * h + 2 * a))
    h -= step
    if (Math.abs(step) < 1e-12 * h) break
  }
  return h
}
