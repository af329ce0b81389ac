import { DB_PER_NEPER } from '../units'

/** What is known of a line before its shunt constants are fitted. */
export interface SeriesConstants {
  readonly loopOhmPerKm: number
  readonly loopMilliHPerKm: number
}

const seriesAt = ({ loopOhmPerKm, loopMilliHPerKm }: SeriesConstants, hz: number) => {
  const reactance = (2 * Math.PI * hz * loopMilliHPerKm) / 1000
  return { resistance: loopOhmPerKm, reactance, impedance: Math.hypot(loopOhmPerKm, reactance) }
}

/**
 * The capacitance that gives a line its published loss, nF/km.
 *
 * γ² = (R + jX)(G + jB) with α = Re γ gives 2α² = |R + jX| |G + jB| + RG − XB, a quadratic in B whose positive root is
 * B = [X (2α² − RG) + 2α |R + jX| √(α² − RG)] / R².
 *
 * Source: the propagation constant of a uniform line, solved for B. Range: α² > RG.
 */
export function fitNanoFPerKm(
  series: SeriesConstants,
  shunt: { readonly microSPerKm: number },
  loss: { readonly dbPerKm: number; readonly hz: number },
): number {
  const { resistance: r, reactance: x, impedance: z } = seriesAt(series, loss.hz)
  const alpha = loss.dbPerKm / DB_PER_NEPER
  const rg = (r * shunt.microSPerKm) / 1e6
  if (alpha ** 2 < rg) throw new RangeError(`a leakage of ${shunt.microSPerKm} µS/km alone loses more`)
  const susceptance = (x * (2 * alpha ** 2 - rg) + 2 * alpha * z * Math.sqrt(alpha ** 2 - rg)) / r ** 2
  return (susceptance / (2 * Math.PI * loss.hz)) * 1e9
}
