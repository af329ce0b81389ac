import { BUILT_IN } from '../catalog/built-in'
import { type CatalogEntries, mergeCatalogs } from '../catalog/catalog'
import { HAZARDS } from '../hazard/kinds'
import { isolated } from '../isolated'
import type { CircuitId, HazardId, LineId, StationId } from '../plan/id'
import { circuitName, lineName, type Plan, stationName } from '../plan/plan'
import {
  fieldText,
  formatDistanceM,
  formatHeightM,
  formatLengthM,
  formatMassKg,
  formatQuantity,
  formatRoughM,
  formatRunM,
  formatTempC,
  type Quantity,
  type UnitSystem,
  unitOf,
} from './units'

/**
 * How a sentence says its figures and names: in the units of the person who reads it, with the names of the plan. Codes come with
 * SI figures and ids; only a `SAY` table under `words/` turns them into text, with one of these in hand.
 */
export interface Tongue {
  readonly system: UnitSystem
  /** `318 m`, `1043 ft`: along the ground, to the whole unit. */
  readonly length: (m: number) => string
  /** `5.5 m`, `18 ft`: how high, how wide; to a tenth. */
  readonly height: (m: number) => string
  /** The same two, rounded up: what is asked for is never told too short. */
  readonly lengthUp: (m: number) => string
  readonly heightUp: (m: number) => string
  /** `30 cm`, `12 in`: how deep in the ground. */
  readonly depth: (m: number) => string
  /** `318 m`, `6.84 km`, `400 ft`, `4.25 mi`: the length of a line or a net. */
  readonly run: (m: number) => string
  /** `33 km`, `850 m`, `4.2 mi`: to two figures, where more would say too much. */
  readonly roughly: (m: number) => string
  /** `6.84 km`, `4.25 mi`. */
  readonly distance: (m: number) => string
  readonly mass: (kg: number) => string
  /** `756 N`, `170 lbf`. */
  readonly force: (newton: number) => string
  readonly temp: (c: number) => string
  /** A difference: `10 °C`, `18 °F`. */
  readonly tempStep: (c: number) => string
  /** Any other quantity with its unit: `60 km/h`, `37.5 Ω/km`. */
  readonly quantity: (si: number, quantity: Quantity) => string
  /** `15 to 30 cm`, `6 to 12 in`. */
  readonly range: (fromSi: number, toSi: number, quantity: Quantity) => string
  /** What the plan calls it: a station, a line, a circuit or a hazard, or an entry of the catalog; the id itself where it has no name, of a hazard what it is. */
  readonly name: (id: string) => string
}

/** The tongue of one person, over the names of one plan. */
export function tongueOf(plan: Plan, system: UnitSystem): Tongue {
  return {
    system,
    length: (m) => formatLengthM(m, system),
    height: (m) => formatHeightM(m, system),
    lengthUp: (m) => roundedUp(m, 1, system),
    heightUp: (m) => roundedUp(m, 10, system),
    depth: (m) => formatQuantity(m, 'depthM', system),
    run: (m) => formatRunM(m, system),
    roughly: (m) => formatRoughM(m, system),
    distance: (m) => formatDistanceM(m, system),
    mass: (kg) => formatMassKg(kg, system),
    force: (newton) => formatQuantity(newton, 'forceN', system),
    temp: (c) => formatTempC(c, system),
    tempStep: (c) => formatQuantity(c, 'tempStepC', system),
    quantity: (si, quantity) => formatQuantity(si, quantity, system),
    range: (fromSi, toSi, quantity) =>
      `${fieldText(fromSi, unitOf(quantity, system))} to ${formatQuantity(toSi, quantity, system)}`,
    name: (id) => nameIn(plan, id),
  }
}

function roundedUp(m: number, parts: number, system: UnitSystem): string {
  const { fromSi, sign } = unitOf('lengthM', system)
  // A metre that came out of feet is not a hair over them.
  return `${Math.ceil(fromSi(m) * parts - 1e-6) / parts} ${sign}`
}

const catalogs = new WeakMap<CatalogEntries, ReturnType<typeof mergeCatalogs>>()

function catalogOf(entries: CatalogEntries) {
  const catalog = catalogs.get(entries) ?? mergeCatalogs(BUILT_IN, entries)
  catalogs.set(entries, catalog)
  return catalog
}

/** What the plan calls a thing of its own or an entry of the catalog, ready to stand in other text. */
export function nameIn(plan: Plan, id: string): string {
  const line = plan.lines.get(id as LineId)
  if (line) return lineName(plan, line)
  const hazard = plan.hazards.get(id as HazardId)
  if (hazard) return isolated(hazard.name) || HAZARDS[hazard.hazard].one
  const circuit = plan.circuits.get(id as CircuitId)
  if (circuit) return circuitName(plan, circuit)
  if (plan.stations.has(id as StationId)) return stationName(plan, id)
  const { wires, sets, supplies } = catalogOf(plan.catalog)
  return isolated((wires.get(id) ?? sets.get(id) ?? supplies.get(id))?.name ?? id)
}
