import type { CatalogEntries } from '../catalog/catalog'
import type { Position } from '../geo/position'
import { isolated } from '../isolated'
import { taken, type Unknown } from '../schema/kept'
import type { Held, Schema } from '../schema/schema'
import type { CIRCUIT } from './circuit-schema'
import type { UnknownOfFeature } from './feature-schema'
import type { RECORD } from './field-schema'
import type { HAZARD_GEOMETRY, HAZARD_KINDS, HAZARD_MEMBERS } from './hazard-schema'
import type { HazardId, LineId, StationId } from './id'
import type { LEG, LINE_MEMBERS } from './line-schema'
import { type ALLOWANCES, COIL, type PAPERS, SETTINGS, type STOCK } from './settings-schema'
import type { STATION_MEMBERS } from './station-schema'

export type Weather = Plan['weather']
export type Station = FeatureThing<typeof STATION_MEMBERS, StationId> & { readonly position: Position }
export type Leg = Held<typeof LEG>
export type Lay = Leg['lay']

/** A run of wire. Its vertices are the position of `from`, the bends, and the position of `to`: see `verticesOf`. */
export type Line = FeatureThing<typeof LINE_MEMBERS, LineId> & {
  readonly bends: readonly Position[]
  /** Elevations that a file gives the line's two ends, m, where they differ from the stations' own. */
  readonly endElevationsM?: readonly [number | null, number | null]
}

export type HazardKind = (typeof HAZARD_KINDS)[number]
export type Hazard = FeatureThing<typeof HAZARD_MEMBERS, HazardId> & {
  readonly geometry: Own<typeof HAZARD_GEOMETRY>
}

export type Circuit = Held<typeof CIRCUIT>
export type Over = NonNullable<Circuit['over']>
export type Coil = Held<typeof COIL>
/** One thing that was done, read or seen on a line. */
export type FieldRecord = Held<typeof RECORD>
export type Allowances = Held<typeof ALLOWANCES>
export type Stock = Held<typeof STOCK>
export type PaperWishes = Held<typeof PAPERS>

type Known<T> = T extends unknown ? Omit<T, 'unknown'> : never
type Own<P extends Schema> = Known<Held<P>>
/** What a feature of a file is in a plan: its id, its properties, and what nobody knows of them. */
type FeatureThing<P extends Schema, Id> = Own<P> & { readonly id: Id; readonly unknown?: UnknownOfFeature }

/** The document: one immutable value. Unchanged parts keep their identity across edits. */
export interface Plan extends Omit<Held<typeof SETTINGS>, 'unknown' | 'catalog'> {
  readonly catalog: CatalogEntries
  readonly stations: ReadonlyMap<StationId, Station>
  readonly lines: ReadonlyMap<LineId, Line>
  readonly hazards: ReadonlyMap<HazardId, Hazard>
  /** Unknown members of the file, of its `plan` member and of its catalog, and whole features of unknown kinds. */
  readonly unknown?: {
    readonly file?: Unknown
    readonly plan?: Unknown
    readonly catalog?: Unknown
    readonly features?: readonly unknown[]
  }
}

/** A repeating coil as PLAN-FORMAT has it. */
export const DEFAULT_COIL: Coil = taken(COIL, {})

/** What an electrode is taken for until its own figure is given, Ω: a rod of about a metre in moist loam. Common practice. */
export const DEFAULT_ELECTRODE_OHMS = 100

/** A plan that says nothing yet: all is as it usually is. */
export const EMPTY_PLAN: Plan = {
  ...taken(SETTINGS, {}),
  stations: new Map(),
  lines: new Map(),
  hazards: new Map(),
}

/** Allowances that a plan starts with. */
export const DEFAULT_ALLOWANCES: Allowances = EMPTY_PLAN.allowances

/** Every vertex of a line, from `from` to `to`. Throws where a station is missing: a checked plan has none missing. */
export function verticesOf(plan: Plan, line: Line): readonly Position[] {
  const [from, to] = endsOf(plan, line)
  return [from, ...line.bends, to]
}

/** Where a line begins and where it ends: without its bends all that its course follows from besides itself. */
export function endsOf(plan: Plan, line: Line): readonly [from: Position, to: Position] {
  const from = plan.stations.get(line.from)
  const to = plan.stations.get(line.to)
  if (!from || !to) throw new Error(`line ${line.id} ends on a station that is not in the plan`)
  return [from.position, to.position]
}

/** One vertex of a line, counted from 0 at `from`. Throws as `verticesOf` does. */
export function vertexOf(plan: Plan, line: Line, index: number): Position {
  const end = index === 0 ? line.from : index > line.bends.length ? line.to : undefined
  const position = end === undefined ? line.bends[index - 1] : plan.stations.get(end)?.position
  if (!position) throw new Error(`line ${line.id} has no vertex ${index}`)
  return position
}

const givenName = (plan: Plan, id: string): string => plan.stations.get(id as StationId)?.name || id

/** The line's name in files and in what is kept: the names of its two stations, as they were given. */
export const plainLineName = (plan: Plan, line: Line): string =>
  `${givenName(plan, line.from)} – ${givenName(plan, line.to)}`

/** A station's name for text, or its id where it has none. Rows of a report carry ids as plain text. */
export const stationName = (plan: Plan, id: string): string => isolated(givenName(plan, id))

/** A line's name for text: the names of its two stations, each apart from the other. */
export const lineName = (plan: Plan, line: Line): string =>
  `${stationName(plan, line.from)} – ${stationName(plan, line.to)}`

/** A circuit's name for text. One that is still called after its first line is written as that line is. */
export function circuitName(plan: Plan, { id, name, lines }: Pick<Circuit, 'id' | 'name' | 'lines'>): string {
  const first = plan.lines.get(lines[0]!)
  return first && name === plainLineName(plan, first) ? lineName(plan, first) : isolated(name || id)
}

/** Number of a line, from 1, as all papers count them. */
export const lineNumber = (plan: Plan, id: LineId): number => [...plan.lines.keys()].indexOf(id) + 1
