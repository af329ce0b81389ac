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

/** A loop of two equal solid wires of one metal, per km. */
export interface SolidLoop {
  /** DC resistance at the wire's own temperature, Ω/km. */
  readonly loopOhmPerKm: number
  /** Loop inductance below the skin effect, mH/km. */
  readonly loopMilliHPerKm: number
  readonly relativePermeability: number
}

/**
 * Resistance and inductance of a loop of iron or steel wire at one frequency.
 *
 * R = R₀ Re(Z/R₀); of the inductance, µ₀µ_r/8π of each wire lies inside it (0.1 µ_r mH/km of the loop) and becomes R₀ Im(Z/R₀)/ω.
 * Source: see `wireImpedanceRatio`. Permeability is taken as constant: telephone currents are far too weak to saturate iron.
 */
export function loopAtHz(
  { loopOhmPerKm, loopMilliHPerKm, relativePermeability }: SolidLoop,
  hz: number,
): { readonly ohmPerKm: number; readonly milliHPerKm: number } {
  if (!(hz > 0) || !(loopOhmPerKm > 0)) return { ohmPerKm: loopOhmPerKm, milliHPerKm: loopMilliHPerKm }
  const omega = 2 * Math.PI * hz
  const x = Math.sqrt((omega * MU_0 * relativePermeability) / ((Math.PI * loopOhmPerKm) / 2000))
  const { re, im } = wireImpedanceRatio(x)
  const insideMilliH = 0.1 * relativePermeability
  return {
    ohmPerKm: loopOhmPerKm * re,
    milliHPerKm: loopMilliHPerKm - insideMilliH + (1000 * loopOhmPerKm * im) / omega,
  }
}
