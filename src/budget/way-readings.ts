import type { CircuitModel } from './circuit-model'
import type { Conditions } from './conditions'
import { constantsOf } from './line-constants'
import { shortestWay } from './path'

/** What instruments read over the way from one station to another, all sets taken off. */
export interface WayReadings {
  /** Loop with the far end shorted (of an earth return: joined to its electrode), electrodes included, Ω. */
  readonly loopOhm: number
  /** Capacitance with the far end open, F. */
  readonly farad: number
  readonly wireM: number
  /** Whether some line of the way returns by earth, so that no second wire is there for a bridge. */
  readonly byEarth: boolean
}

/**
 * Loop resistance and capacitance of the shortest way between two stations; null where there is none.
 *
 * Σ R·length + electrodes, Σ C·length: resistance and capacitance of a line that is short against the wave add up.
 */
export function wayReadings(
  model: CircuitModel,
  conditions: Conditions,
  from: string,
  to: string,
): WayReadings | null {
  const way = shortestWay(model, model.stations.indexOf(from), model.stations.indexOf(to))
  if (!way) return null
  let [loopOhm, farad, wireM] = [0, 0, 0]
  for (const line of way) {
    const { electrodeOhms } = line
    const { ohmPerKm, faradPerKm } = constantsOf(line, conditions)
    const [near, far] = electrodeOhms ?? [0, 0]
    loopOhm += (ohmPerKm * line.wireM) / 1000 + near + far
    farad += (faradPerKm * line.wireM) / 1000
    wireM += line.wireM
  }
  return { loopOhm, farad, wireM, byEarth: way.some(({ electrodeOhms }) => electrodeOhms !== null) }
}
