import { ICE_KG_PER_M3, type Loading } from '../catalog/overhead-loading'
import type { Wire } from '../catalog/wire'

/** Standard gravity, m/s². CGPM, 3rd conference (1901). */
const GRAVITY_M_S2 = 9.80665

/** Weight of a run of wire, N/m. */
export const weightNPerM = (wire: Pick<Wire, 'kgPerKm'>): number => (wire.kgPerKm / 1000) * GRAVITY_M_S2

/** Mean density of insulated copper wire, kg/m³: allowance, for wire of which only the mass is known. */
const WIRE_KG_PER_M3 = 2500

/** What ice and wind lie on. */
type Hung = Pick<Wire, 'kgPerKm' | 'outsideMm' | 'hangsApart'>

/** Weight of wire with its ice, push of the wind across it, and both together, N per m of the run. */
interface LoadedWeight {
  readonly plumbNPerM: number
  readonly acrossNPerM: number
  readonly resultantNPerM: number
}

/**
 * Weight of a wire under ice and wind.
 *
 * w = √((w₀ + n γ π t (d + t))² + (n p (d + 2t))²) with ice t thick on n wires of diameter d. Source: NESC Rule 251 as manuals of line design
 * give it (from memory), without the constant that it adds for tensions; tables 17, 21 and 22 of GO 95 (California) agree with it.
 */
export function loadedWeight(wire: Hung, { iceMm, windPa }: Pick<Loading, 'iceMm' | 'windPa'>): LoadedWeight {
  const apart = wire.hangsApart ?? 1
  const outsideM =
    wire.outsideMm === undefined
      ? Math.sqrt((4 * wire.kgPerKm) / 1000 / apart / (Math.PI * WIRE_KG_PER_M3))
      : wire.outsideMm / 1000
  const iceM = iceMm / 1000
  const iceNPerM = Math.PI * iceM * (outsideM + iceM) * ICE_KG_PER_M3 * GRAVITY_M_S2
  const plumbNPerM = weightNPerM(wire) + apart * iceNPerM
  const acrossNPerM = apart * windPa * (outsideM + 2 * iceM)
  return { plumbNPerM, acrossNPerM, resultantNPerM: Math.hypot(plumbNPerM, acrossNPerM) }
}
