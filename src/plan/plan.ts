import type { CatalogEntries } from '../catalog/catalog'
import type { Position } from '../geo/position'
import { isolated } from '../isolated'
import type { CircuitId, HazardId, LineId, StationId } from './id'
import type { Work } from './work'

/** Members of a plan file that this program does not know: kept, and written back untouched. */
export type Rest = Readonly<Record<string, unknown>>

export const LAYS = ['surface', 'overhead', 'buried', 'water'] as const
export type Lay = (typeof LAYS)[number]
export type Weather = 'dry' | 'wet'

export interface Station {
  readonly id: StationId
  readonly name: string
  readonly note: string
  readonly position: Position
  readonly rest?: { readonly feature?: Rest; readonly properties?: Rest; readonly geometry?: Rest }
}

/** The stretch between two neighbouring vertices of a line. What is absent comes from the plan's allowances. */
export interface Leg {
  readonly lay: Lay
  readonly slackPct?: number
  readonly sagPct?: number
  /** Overhead: height of the wire over the ground at its supports, m, and the distance from one to the next, m. */
  readonly supportM?: number
  readonly spanM?: number
  readonly note?: string
  readonly rest?: Rest
}

/** A run of wire. Its vertices are the position of `from`, the bends, and the position of `to`: see `verticesOf`. */
export interface Line {
  readonly id: LineId
  readonly from: StationId
  readonly to: StationId
  readonly bends: readonly Position[]
  /** One leg more than there are bends. */
  readonly legs: readonly Leg[]
  /** Id of a wire in the catalog. */
  readonly wire: string
  readonly pairs: number
  readonly return: 'pair' | 'earth'
  /** Earth return only: resistance of the electrodes at `from` and at `to`, Ω. */
  readonly electrodeOhms?: readonly [number, number]
  /** Old, nicked wire: it leaks as its `wornMicroSPerKm` when wet, and ten times as much as new when dry. */
  readonly worn?: true
  /** Elevations that a file gives the line's two ends, m, where they differ from the stations' own. */
  readonly endElevationsM?: readonly [number | null, number | null]
  readonly rest?: { readonly feature?: Rest; readonly properties?: Rest; readonly geometry?: Rest }
}

export const HAZARD_KINDS = ['road', 'track', 'railway', 'water', 'power-line', 'keep-out'] as const
export type HazardKind = (typeof HAZARD_KINDS)[number]

export interface Hazard {
  readonly id: HazardId
  readonly hazard: HazardKind
  readonly name: string
  readonly geometry:
    | { readonly type: 'LineString'; readonly coordinates: readonly Position[] }
    | { readonly type: 'Polygon'; readonly coordinates: readonly (readonly Position[])[] }
  readonly rest?: { readonly feature?: Rest; readonly properties?: Rest; readonly geometry?: Rest }
}

/** A circuit over two pairs of each of its lines, both wires of each as one conductor; or over one pair so, and the earth. */
export type Over = 'phantom' | 'simplex'

/** One electrical path over one pair of each of its lines; where its lines meet at a station they are joined. */
export interface Circuit {
  readonly id: CircuitId
  readonly name: string
  readonly lines: readonly LineId[]
  /** The telephone at each station that has one, by catalog id; other stations are joints. */
  readonly sets: ReadonlyMap<StationId, string>
  /** `null`: every set feeds itself and rings with its own generator. */
  readonly supply: { readonly type: string; readonly at: StationId; readonly rest?: Rest } | null
  /** Absent: over a pair of its own. */
  readonly over?: Over
  /** Simplex only: resistance of the earth electrode at each station with a set, Ω. */
  readonly electrodeOhms?: Readonly<Record<StationId, number>>
  readonly rest?: Rest
}

/** What one repeating coil takes off speech and off ringing, dB. */
export interface Coil {
  readonly voiceDb: number
  readonly ringDb: number
  readonly rest?: Rest
}

export interface Allowances {
  readonly slackPct: Readonly<Record<Lay, number>>
  /** Mid-span sag of overhead legs as a percentage of the span. */
  readonly sagPct: number
  /** Wire left at each end of a line, m. */
  readonly tailM: number
  /** Wire used up by one splice, m. */
  readonly spliceWasteM: number
  /** Spare wire carried beyond what the plan needs, %. */
  readonly reservePct: number
  /** Ohms of each wire of each splice; absent: none. */
  readonly spliceOhms?: number
  /** Leakage of each splice when wet, µS; absent: none. */
  readonly spliceMicroS?: number
  /** Loss of one repeating coil to speech and to ringing, dB; absent: `DEFAULT_COIL`. */
  readonly coil?: Coil
  readonly rest?: Rest
}

/** Spools at hand. */
export interface Stock {
  readonly wire: string
  readonly lengthM: number
  readonly count: number
  readonly rest?: Rest
}

/** How a plan's papers are wanted; each member where a person has said it. */
export interface PaperWishes {
  readonly revision?: string
  /** Name of the size of a sheet. */
  readonly size?: string
  /** Names of the kinds of paper that are printed. */
  readonly kinds?: readonly string[]
  readonly rest?: Rest
}

/** The document: one immutable value. Unchanged parts keep their identity across edits. */
export interface Plan {
  readonly title: string
  readonly note: string
  readonly weather: Weather
  readonly wireTempC: number
  readonly allowances: Allowances
  readonly catalog: CatalogEntries
  readonly circuits: ReadonlyMap<CircuitId, Circuit>
  readonly stock: readonly Stock[]
  readonly work?: Work
  readonly papers?: PaperWishes
  readonly stations: ReadonlyMap<StationId, Station>
  readonly lines: ReadonlyMap<LineId, Line>
  readonly hazards: ReadonlyMap<HazardId, Hazard>
  /** Unknown members of the file, of its `plan` member and of its catalog, and whole features of unknown kinds. */
  readonly rest?: {
    readonly file?: Rest
    readonly plan?: Rest
    readonly catalog?: Rest
    readonly features?: readonly unknown[]
  }
}

/** Allowances that a plan starts with; PLAN-FORMAT gives their meaning. A person can change each of them. */
export const DEFAULT_ALLOWANCES: Allowances = {
  slackPct: { surface: 20, overhead: 3, buried: 5, water: 15 },
  sagPct: 2,
  tailM: 8,
  spliceWasteM: 0.5,
  reservePct: 10,
}

/** A repeating coil as PLAN-FORMAT has it. */
export const DEFAULT_COIL: Coil = { voiceDb: 0.5, ringDb: 1 }

/** What an electrode is taken for until its own figure is given, Ω: a rod of about a metre in moist loam. Common practice. */
export const DEFAULT_ELECTRODE_OHMS = 100

export const EMPTY_PLAN: Plan = {
  title: 'New plan',
  note: '',
  weather: 'dry',
  wireTempC: 20,
  allowances: DEFAULT_ALLOWANCES,
  catalog: { wires: [], sets: [], supplies: [] },
  circuits: new Map(),
  stock: [],
  stations: new Map(),
  lines: new Map(),
  hazards: new Map(),
}

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
