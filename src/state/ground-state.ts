import { signal } from '@preact/signals'
import type { Position } from '../geo/position'
import type { HazardFeatures } from '../hazard/hazard-features'
import type { Watch } from '../jobs/terrain-jobs'
import type { LineId } from '../plan/id'
import type { Result } from '../problem'
import type { NearRequest, NearRoutes } from '../route/near-routes'
import { DEFAULT_ROUTE_WEIGHTS, type RouteWeights } from '../route/route-weights'
import type { NetRequest, SuggestedNet } from '../route/suggest-nets'
import type { RouteRequest, SuggestedRoute } from '../route/suggest-route'
import type { GridGround } from '../terrain/ground-from-grids'
import type { KeptGrid } from '../terrain/kept-grid'
import type { Relief, ReliefRequest } from '../terrain/relief'
import type { Area } from '../terrain/rings-within'

/** Long work under way, and the way to stop it. */
export interface Work {
  readonly words: string
  /** Part done, 0…1. */
  readonly done: number
  readonly stop: () => void
}

/** Who does the long work on the ground: put here from outside, so that no screen knows how. Undefined where the work was stopped. */
export interface GroundWorker {
  readonly add: (files: readonly File[]) => Promise<void>
  readonly remove: (key: string) => Promise<void>
  /** The middle of a file, wherever it lies. */
  readonly find: (key: string) => Promise<Position | undefined>
  /** Null where no ground is known. */
  readonly drawRelief: (request: ReliefRequest) => Promise<Result<Relief | null> | undefined>
  readonly suggestRoute: (request: RouteRequest, watch?: Watch) => Promise<Result<SuggestedRoute> | undefined>
  readonly nearRoutes: (request: NearRequest, watch?: Watch) => Promise<Result<NearRoutes> | undefined>
  readonly suggestNets: (request: NetRequest, watch?: Watch) => Promise<Result<SuggestedNet[]> | undefined>
}

/** A place on a line that is pointed at, on the map or on the profile. */
export interface Cursor {
  readonly line: LineId
  /** On the map from the line's first station, m. */
  readonly mapM: number
}

/** Ways drawn beside the lines, to take or to leave; each from end to end. */
export type Suggested = readonly (readonly Position[])[]

/** What is drawn beside ways that are suggested. */
export interface BesideSuggested {
  readonly ways: Suggested
  readonly corridor: Area
  readonly close: readonly Position[]
  /** What is told of the ways of a line, for paper; null where nothing is. */
  readonly told: {
    readonly title: string
    /** The cheapest first. */
    readonly all: Suggested
    readonly sentences: readonly string[]
  } | null
}

export const NOTHING_BESIDE: BesideSuggested = { ways: [], corridor: [], close: [], told: null }

/** Features of a file that wait for the person to say which hazards they are. */
export interface Imported {
  readonly name: string
  readonly features: HazardFeatures
}

/** All that the ground adds to the store. */
export function createGroundState() {
  return {
    ground: signal<GridGround | undefined>(undefined),
    /** The elevation files at hand. */
    grids: signal<readonly KeptGrid[]>([]),
    groundWorker: signal<GroundWorker | null>(null),
    work: signal<Work | null>(null),
    cursor: signal<Cursor | null>(null),
    imported: signal<Imported | null>(null),
    /** Whether files are held over the page, to be dropped. */
    dropping: signal(false),
    /** What a suggested route pays for. */
    routeWeights: signal<RouteWeights>(DEFAULT_ROUTE_WEIGHTS),
    suggested: signal<Suggested>([]),
    /** Ways beside the one that is suggested, the ground in which they lie, and where two that should keep apart do not. */
    besideSuggested: signal<BesideSuggested>(NOTHING_BESIDE),
    shade: signal<'on' | 'off'>('on'),
    contours: signal<'on' | 'off'>('on'),
  }
}
