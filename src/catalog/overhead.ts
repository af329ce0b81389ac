import { METRES_PER_FOOT } from '../units'

/** How overhead wire is usually built, where a leg says nothing else. The local code governs. */
export const OVERHEAD = {
  /** Distance between supports, m. US Army Signal subcourse SS0440, p. 1-27: 100 ft between lance poles. */
  spanM: 100 * METRES_PER_FOOT,
  /** Height of the wire at its supports, m. Popular Science Monthly 90 (1917), p. 820: 18 ft poles at a crossing. */
  supportM: 18 * METRES_PER_FOOT,
  /** Breaking strength over the greatest tension, at least. Common practice for wire over people; codes ask from 2 to 4. */
  safetyFactor: 4,
  /** Conductor temperatures at which a span is worst: NESC Rule 232 as published summaries give it, 120 °F; cold from memory. */
  hotC: 49,
  coldC: -20,
} as const

/**
 * Elasticity of hard-drawn copper as it hangs, N/mm², and its expansion, 1/°C. From memory: 110 to 120 GPa, 17·10⁻⁶.
 * For wire that says nothing of how it stretches; steel strands stretch and expand less.
 */
export const COPPER_STRETCH = { modulusNPerMm2: 115_000, expansionPerC: 17e-6 } as const
/** Resistivity of annealed copper at 20 °C, Ω·mm² per km. IEC 60028 (1925). */
export const COPPER_OHM_MM2_PER_KM = 17.241
