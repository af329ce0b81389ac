/** μ₀, H/m: 4π·10⁻⁷, to ten digits still so since 2019 (CODATA). */
const MU_0 = 4e-7 * Math.PI

/** How many levels of the continued fraction are reckoned: far beyond any wire and any voice. */
const LEVELS = 60

/**
 * Impedance inside a round solid wire over its direct-current resistance: its real part is R/R₀, its imaginary part ωLᵢ/R₀.
 *
 * Z/R₀ = ½ z J₀(z)/J₁(z) with z² = −j x², as a continued fraction: 1 + ½ jx²/(4 + jx²/(6 + jx²/(8 + …))).
 * Source: E. B. Rosa and F. W. Grover, Formulas and Tables for the Calculation of Inductance, Bulletin of the Bureau of Standards 8
 * (1912), section on the skin effect; the fraction by the recurrence of Bessel functions. Range: x to about 40.
 *
 * @param x √(ω μ / (π R₀)), R₀ in Ω per metre of one wire
 */
export function wireImpedanceRatio(x: number): { readonly re: number; readonly im: number } {
  const x2 = x * x
  let [re, im] = [2 * LEVELS, 0]
  for (let level = LEVELS - 1; level >= 2; level--) {
    const square = re * re + im * im
    // jx² / (re + j im) = x² (im + j re) / |…|²
    ;[re, im] = [2 * level + (x2 * im) / square, (x2 * re) / square]
  }
  const square = re * re + im * im
  return { re: 1 + (x2 * im) / square / 2, im: (x2 * re) / square / 2 }
}

/** Solid wire of one metal, all its conductors in series, per km. */
export interface SolidWire {
  /** How many conductors lie in series: two of a pair, one with the earth as the other. */
  readonly conductors: 1 | 2
  /** DC resistance at the wire's own temperature, Ω/km. */
  readonly ohmPerKm: number
  /** Inductance below the skin effect, H/km. */
  readonly henryPerKm: number
  readonly relativePermeability: number
}

/**
 * Series resistance and reactance of iron or steel wire at one frequency, Ω/km.
 *
 * R = R₀ Re(Z/R₀). Of the inductance, µ₀µ_r/8π lies inside each conductor (0.05 µ_r mH/km) and gives way to R₀ Im(Z/R₀).
 * Source: see `wireImpedanceRatio`. Permeability is taken as constant: telephone currents are far too weak to saturate iron.
 */
export function seriesOfSolid(
  { conductors, ohmPerKm, henryPerKm, relativePermeability }: SolidWire,
  hz: number,
): { readonly resistance: number; readonly reactance: number } {
  const omega = 2 * Math.PI * hz
  if (!(hz > 0) || !(ohmPerKm > 0)) return { resistance: ohmPerKm, reactance: omega * henryPerKm }
  const ohmPerM = ohmPerKm / conductors / 1000
  const { re, im } = wireImpedanceRatio(
    Math.sqrt((omega * MU_0 * relativePermeability) / (Math.PI * ohmPerM)),
  )
  const insideHenry = (conductors * MU_0 * relativePermeability * 1000) / (8 * Math.PI)
  return { resistance: ohmPerKm * re, reactance: omega * (henryPerKm - insideHenry) + ohmPerKm * im }
}
