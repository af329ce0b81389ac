/** Two equal parallel round wires. */
export interface PairGeometry {
  /** Axis to axis, mm. */
  readonly spacingMm: number
  readonly diameterMm: number
}

/** π ε₀ in nF/km: ε₀ = 8.8541878 pF/m (CODATA). */
const PI_EPSILON_0_NANO_F_PER_KM = Math.PI * 8.8541878

/**
 * Capacitance between the two wires of a pair, nF/km.
 *
 * C = π ε₀ ε_r / arcosh(D / d).
 *
 * Source: capacitance of two parallel cylinders (W. R. Smythe, Static and Dynamic Electricity, ch. IV).
 *
 * @param relativePermittivity ε_r of what surrounds the wires; for insulated wires in air, an effective figure
 */
export const pairNanoFPerKm = (
  { spacingMm, diameterMm }: PairGeometry,
  relativePermittivity: number,
): number => (PI_EPSILON_0_NANO_F_PER_KM * relativePermittivity) / Math.acosh(spacingMm / diameterMm)

/**
 * Loop inductance of a pair below the skin effect, mH/km.
 *
 * L = 0.4 [arcosh(D / d) + µ_r / 4].
 *
 * Source: inductance of two parallel wires (F. E. Terman, Radio Engineers' Handbook, 1943, section 2).
 *
 * @param relativePermeability µ_r of the wire: 1 for copper and aluminium, about 100 for mild steel at telephone currents
 */
export const pairMilliHPerKm = (
  { spacingMm, diameterMm }: PairGeometry,
  relativePermeability: number,
): number => 0.4 * (Math.acosh(spacingMm / diameterMm) + relativePermeability / 4)
