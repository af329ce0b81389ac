import type { Odds } from '../budget/odds'
import type { Catalog } from '../catalog/catalog'
import type { Position } from '../geo/position'
import { gridConvergenceDeg, hasUtm, utmZone } from '../geo/utm'
import { type Declination, declinationAt } from '../measure/declination'
import type { Plan } from '../plan/plan'
import type { Result } from '../problem'
import type { Report } from '../report/report'
import type { GridGround } from '../terrain/ground-from-grids'
import type { UnitSystem } from '../words/units'
import type { FarOnPaper } from './far-on-paper'
import type { PaperScope } from './paper-scope'
import type { WaysOnPaper } from './ways-on-paper'

/** What every paper is made from: nothing is reckoned anew, so that no paper can disagree with the screen. */
export interface PaperSource {
  readonly plan: Plan
  readonly report: Report
  readonly catalog: Catalog
  /** Heights, where they are known. */
  readonly ground?: GridGround | undefined
  readonly system: UnitSystem
  /** Which lines and circuits they are made for. */
  readonly scope: PaperScope
  /** Name of the sheets of labels that are wanted. */
  readonly labels: string
  /** By circuit, as far as they have been reckoned on the screen. */
  readonly odds: ReadonlyMap<string, Odds>
  /** How far it could go from where the screen shows it. */
  readonly far: FarOnPaper | null
  /** Ways that a line could take, where the screen shows them. */
  readonly ways: WaysOnPaper | null
  /** Address of the program, for codes that open it; empty where it has none that others can reach. */
  readonly program: string
  /** Tells prints of one plan from those of another. */
  readonly fingerprint: string
  /** ISO 8601 day that stands on the papers; magnetic north is told for it. */
  readonly date: string
}

/** The three norths at one place. */
export interface Norths {
  readonly declination: Result<Declination>
  /** Grid north from true north, ° east; undefined where the grid does not reach. */
  readonly convergenceDeg: number | undefined
  readonly zone: string | undefined
}

export function northsAt(position: Position, day: string): Norths {
  const [lonDeg, latDeg] = position
  const isOnGrid = hasUtm(latDeg)
  return {
    declination: declinationAt(position, day),
    convergenceDeg: isOnGrid ? gridConvergenceDeg(position) : undefined,
    zone: isOnGrid ? `${utmZone(lonDeg, latDeg)} ${latDeg < 0 ? 'south' : 'north'}` : undefined,
  }
}

const eastOrWest = (deg: number) => `${Math.abs(deg).toFixed(1)}° ${deg < 0 ? 'W' : 'E'}`

/** What to turn a true bearing by, in words: `Magnetic north 5.6° E of true (WMM2025, 2026-11-25). Grid north 1.2° W of true.` */
export function northsText({ declination, convergenceDeg, zone }: Norths, day: string): string {
  const magnetic = declination.ok
    ? `Magnetic north ${eastOrWest(declination.value.eastDeg)} of true (${declination.value.model}, ${day}).`
    : declination.problems.map((problem) => problem.message).join(' ')
  const grid =
    convergenceDeg === undefined
      ? ''
      : ` Grid north ${eastOrWest(convergenceDeg)} of true (UTM zone ${zone}).`
  return magnetic + grid
}

/** Which north the bearings of a paper count from. */
export interface BearingBasis {
  readonly word: 'magnetic' | 'true'
  readonly of: (trueDeg: number) => number
}

/** Magnetic bearings, for the compass in the hand; true ones where the needle's turn is not known. */
export const bearingBasis = ({ declination }: Norths): BearingBasis =>
  declination.ok
    ? { word: 'magnetic', of: (trueDeg) => trueDeg - declination.value.eastDeg }
    : { word: 'true', of: (trueDeg) => trueDeg }
