import { bad, ok, type Result } from '../problem'
import { type TypedFigure, withFigure } from './entry-value'
import type { Wire } from './wire'

/** What a meter said of a known length of wire with its far ends twisted together (ohms), or open (capacitance, insulation). */
export interface WireReading {
  readonly lengthM: number
  readonly loopOhms?: number
  readonly nanoF?: number
  readonly kOhms?: number
  /** Temperature of the wire while it was read, °C. */
  readonly tempC: number
  readonly weather: 'dry' | 'wet'
  /** The length that was read is old and nicked. */
  readonly worn?: boolean
  /** How far the meter and the length may be off together, %: 95 of 100 such readings lie within. */
  readonly meterPct: number
}

const fault = (at: string, message: string) => bad({ code: 'out-of-range', at, message })

/**
 * A wire with what was read of it in the place of what was printed, and the spread of the reading in the place of the lot's.
 *
 * R₂₀ = R / (L [1 + α (t − 20)]): the temperature is taken out. C' = C / L, G' = 1 / (R L). A reading on wire that lies as it will be
 * used, with all its splices, is the best there is.
 */
export function wireFromReading(wire: Wire, reading: WireReading): Result<Wire> {
  const { lengthM, loopOhms, nanoF, kOhms, tempC, weather, worn, meterPct } = reading
  if (!(lengthM >= 1 && lengthM <= 1e6))
    return fault('lengthM', `A length of ${lengthM} m: give one from 1 to 1,000,000 m.`)
  if (!(meterPct >= 0.01 && meterPct <= 100))
    return fault('meterPct', `A meter within ${meterPct} %: give 0.01 to 100 %.`)
  const read = Object.entries({ loopOhms, nanoF, kOhms }).filter(([, value]) => value !== undefined)
  if (read.length === 0) return fault('loopOhms', 'Nothing was read yet: type what the meter says.')
  const warm = 1 + wire.tempCoeffPerC * (tempC - 20)
  if (!(warm > 0))
    return fault('tempC', `A wire at ${tempC} °C: the law of its resistance does not reach so far.`)
  for (const [at, value] of read)
    if (!(value! > 0)) return fault(at, `A reading of ${value}: give more than 0.`)
  const km = lengthM / 1000
  const where = `Read on ${lengthM} m at ${tempC} °C, ${weather}`
  const wet = weather === 'wet'
  const leak = !wet ? 'dryMicroSPerKm' : worn ? 'wornMicroSPerKm' : 'wetMicroSPerKm'
  const figures: TypedFigure[] = []
  const take = (at: keyof Wire, value: number, says: string) => {
    figures.push({ at, value, meterPct, says: `${where}: ${says}.` })
  }
  if (loopOhms !== undefined) take('loopOhmPerKm', loopOhms / km / warm, `${loopOhms} Ω`)
  if (nanoF !== undefined) take(wet ? 'wetNanoFPerKm' : 'nanoFPerKm', nanoF / km, `${nanoF} nF`)
  if (kOhms !== undefined) take(leak, 1000 / (kOhms * km), `${kOhms} kΩ`)
  const measured = figures.reduce((entry, figure) => withFigure(entry, figure), wire)
  return ok({ ...measured, source: `${wire.source.replace(/; measured$/, '')}; measured` })
}
