import type { CircuitId, HazardId, LineId, StationId } from '../plan/id'
import { lineName, type Plan } from '../plan/plan'
import { METRES_PER_FOOT, NEWTONS_PER_POUND_FORCE } from '../units'
import {
  formatDistanceM,
  formatLengthM,
  formatMassKg,
  formatRunM,
  formatTempC,
  type UnitSystem,
} from './quantity-text'

/** How one person reads figures and names. Every sentence is made through it, so that none can mix units. */
export interface Tongue {
  readonly system: UnitSystem
  /** `318 m`, `1043 ft`. */
  readonly length: (m: number) => string
  /** `318 m` below a kilometre, else `6.84 km`. */
  readonly run: (m: number) => string
  /** `6.84 km`, `4.25 mi`. */
  readonly distance: (m: number) => string
  /** `5.5 m`, `18 ft`: a height or a short distance that a tape measures. */
  readonly height: (m: number) => string
  /** `756 N`, `170 lbf`. */
  readonly force: (n: number) => string
  readonly mass: (kg: number) => string
  readonly temp: (c: number) => string
  /** The name of a station, line, circuit or hazard of the plan; its id where it has none. */
  readonly name: (id: string) => string
}

/** To one decimal, no needless zero: `5.5`, `18`. */
const tenths = (value: number): string => String(Number(value.toFixed(1)))

function nameIn(plan: Plan, id: string): string {
  const line = plan.lines.get(id as LineId)
  if (line) return lineName(plan, line)
  const named =
    plan.stations.get(id as StationId) ??
    plan.circuits.get(id as CircuitId) ??
    plan.hazards.get(id as HazardId)
  return named?.name || id
}

/** How a person who reads these units is told about a plan. */
export const tongueOf = (plan: Plan, system: UnitSystem): Tongue => ({
  system,
  length: (m) => formatLengthM(m, system),
  run: (m) => formatRunM(m, system),
  distance: (m) => formatDistanceM(m, system),
  height: (m) => (system === 'us' ? `${tenths(m / METRES_PER_FOOT)} ft` : `${tenths(m)} m`),
  force: (n) => (system === 'us' ? `${Math.round(n / NEWTONS_PER_POUND_FORCE)} lbf` : `${Math.round(n)} N`),
  mass: (kg) => formatMassKg(kg, system),
  temp: (c) => formatTempC(c, system),
  name: (id) => nameIn(plan, id),
})
