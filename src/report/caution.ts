import type { LoadingDistrict } from '../catalog/overhead-loading'
import type { HazardNote } from '../hazard/crossing-notes'
import type { SpliceNote } from '../materials/splice-limits'
import type { HazardId, LineId } from '../plan/id'
import type { Over } from '../plan/plan'

/** Where on a line: on the map from the line's first station, m. */
export interface CautionPlace {
  readonly position: readonly [lonDeg: number, latDeg: number]
  readonly legIndex: number
  readonly distanceM: number
}

interface About {
  /** Id of a line, station, circuit or wire; empty for the whole plan. */
  readonly where: string
  readonly place?: CautionPlace
  /** The handbook's or the code's place that the figure is from. */
  readonly source?: string
}

/** What can be amiss at one place on a line, hazards aside, with the figures that a sentence needs. */
interface PlaceNotes {
  'low-overhead': { readonly hangsM: number; readonly mustClearM: number }
  'overhead-tension': {
    readonly coldC: number
    readonly pullN: number
    readonly safetyFactor: number
    readonly leastFactor: number
  }
  'overhead-ice': {
    /** The loading district that the plan names. */
    readonly district?: LoadingDistrict
    readonly iceMm: number
    readonly hangsM: number
    readonly mustClearM: number
    /** Share of its strength to which ice and wind pull it, and the share allowed. */
    readonly pulledShare: number
    readonly mostShare: number
  }
  'ridge-lightning': { readonly lengthM: number }
}

/** What holds for a line, a circuit, a wire or the whole plan. */
interface WholeNotes {
  'ringing-shock': { readonly volts: number }
  'dc-shock': { readonly volts: number }
  'earth-return': object
  /** A phantom or simplex is heard on the pairs under it, by so much less than itself where their two wires differ by so many ohms. */
  'rider-balance': { readonly over: Over; readonly unbalanceOhms: number; readonly crosstalkDb: number }
  'stock-short': { readonly missingM: number; readonly notLaid: readonly LineId[] }
  'power-lines': object
  lightning: object
  'road-and-rail': object
  'public-network': object
}

type Coded<N> = { readonly [C in keyof N]: { readonly code: C } & N[C] }[keyof N]

/** A caution about a hazard that a line meets. */
export type HazardCaution = About & HazardNote & { readonly hazard: HazardId; readonly place: CautionPlace }

/** A caution about one place on a line. */
export type PlaceCaution = About & Coded<PlaceNotes> & { readonly place: CautionPlace }

/** What could hurt someone, or stop the job: a code with its figures in SI units, and what it is about. */
export type Caution =
  | HazardCaution
  | PlaceCaution
  /** `pair`, from 0, only where the line has several. */
  | (About & SpliceNote & { readonly pair?: number })
  | (About & Coded<WholeNotes>)
