import { type WireStretch, wireOnCrossings } from '../measure/crossing-wire'
import type { MeasuredLine } from '../measure/measured'
import { layAtWireM, type PlaceOnLine, pointAtWireM, wireMOnLeg } from '../measure/place-on-line'
import { memoryOfEach } from '../memo'
import type { Lay, Line, Plan } from '../plan/plan'
import { METRES_PER_MILE } from '../units'
import { CLUSTER_M } from './cut-runs'
import type { Piece } from './spool-plan'

/** Class A wire has no more splices than this in half a mile of one conductor. Source: US Army subcourse SS0440, p. 3-4, par. 4. */
export const CLASS_A_SPLICES = 4
const HALF_MILE_M = METRES_PER_MILE / 2

/** A splice where it will fall on a line. */
export interface Splice extends PlaceOnLine {
  readonly pair: number
  /** Wire from the line's `from` end to the splice, m. */
  readonly wireM: number
  /** Spools whose wire it joins. */
  readonly spools: readonly [string, string]
}

/** What can be amiss with the splices of a line, with the figures that a sentence needs. */
interface SpliceNotes {
  'class-b-wire': { readonly splices: number; readonly most: number; readonly inM: number }
  'splice-cluster': { readonly withinM: number }
  'splice-under-water': object
  'splice-on-span': object
}

export type SpliceNote = {
  readonly [C in keyof SpliceNotes]: { readonly code: C } & SpliceNotes[C]
}[keyof SpliceNotes]

/** What is amiss with the splices of one pair of a line. */
interface SpliceFlag {
  readonly note: SpliceNote
  readonly pair: number
  /** Wire from the line's `from` end to the first splice that is amiss, m; undefined where it is the number of them. */
  readonly wireM?: number
}

/** So far before and after a crossing there should be no splice, m of ground: an allowance, so that it can be reached and tied off. */
const BESIDE_CROSSING_M = 10

const remembered = memoryOfEach<MeasuredLine, readonly WireStretch[]>()

/**
 * Where on a line no splice should fall: on overhead legs, where it hangs out of reach and bears the pull; under water; and on
 * crossings, where it cannot be got at. Common practice.
 */
export function splicesToAvoid(plan: Plan, line: Line, measured: MeasuredLine): readonly WireStretch[] {
  return remembered(measured, [line, plan.hazards], () => {
    const legs = measured.legs.flatMap(({ lay }, legIndex) =>
      lay === 'overhead' || lay === 'water'
        ? [{ fromM: wireMOnLeg(measured, legIndex, 0), toM: wireMOnLeg(measured, legIndex, 1) }]
        : [],
    )
    return [...legs, ...wireOnCrossings(plan, line, measured, BESIDE_CROSSING_M)]
  })
}

const byPair = (pieces: readonly Piece[]): ReadonlyMap<number, readonly Piece[]> => {
  const pairs = new Map<number, Piece[]>()
  for (const piece of pieces) {
    const own = pairs.get(piece.pair)
    if (own) own.push(piece)
    else pairs.set(piece.pair, [piece])
  }
  return pairs
}

/** The splices of a line, pair by pair from `from` to `to`, each with its place on the map. */
export function splicesOf(
  plan: Plan,
  line: Line,
  measured: MeasuredLine,
  pieces: readonly Piece[],
): readonly Splice[] {
  return [...byPair(pieces)].flatMap(([pair, own]) => {
    let wireM = 0
    return own.slice(1).map((piece, i): Splice => {
      wireM += own[i]!.wireM
      return {
        ...pointAtWireM(plan, measured, line, wireM),
        pair,
        wireM,
        spools: [own[i]!.spool, piece.spool],
      }
    })
  })
}

/** The splices of a line by place, in the order in which the crew comes to them: pairs that are spliced at one place share it. */
export function splicePlacesOf(
  plan: Plan,
  line: Line,
  measured: MeasuredLine,
  pieces: readonly Piece[],
): readonly (readonly [Splice, ...Splice[]])[] {
  const places: [Splice, ...Splice[]][] = []
  for (const splice of splicesOf(plan, line, measured, pieces).toSorted((a, b) => a.wireM - b.wireM)) {
    const last = places.at(-1)
    if (last && last[0].wireM === splice.wireM) last.push(splice)
    else places.push([splice])
  }
  return places
}

/**
 * Splices that a handbook or common practice would not have, one flag a pair and kind.
 *
 * Class: more than 4 splices a conductor per half mile make class B wire, for training and the rear only (SS0440 p. 3-4 par. 4-5);
 * a line shorter than half a mile counts as half a mile. Cluster: splices within 15 ft are to be cut out and made one (par. 3d).
 * No splice under water or on a span: common practice.
 */
export function flagSplices(measured: MeasuredLine, pieces: readonly Piece[]): readonly SpliceFlag[] {
  const flags: SpliceFlag[] = []
  for (const [pair, own] of byPair(pieces)) {
    if (own.length === 1) continue
    const flag = (note: SpliceNote, wireM?: number) =>
      flags.push({ note, pair, ...(wireM !== undefined && { wireM }) })
    const splices = own.length - 1
    const perHalfMile = splices / Math.max(1, measured.wireM / HALF_MILE_M)
    if (perHalfMile > CLASS_A_SPLICES)
      flag({ code: 'class-b-wire', splices: perHalfMile, most: CLASS_A_SPLICES, inM: HALF_MILE_M })
    let runM = 0
    const endsM = own.map((piece) => {
      runM += piece.wireM
      return runM
    })
    const short = own.findIndex((piece, i) => i > 0 && i < splices && piece.wireM <= CLUSTER_M)
    if (short > 0) flag({ code: 'splice-cluster', withinM: CLUSTER_M }, endsM[short])
    const firstOn = (lay: Lay) => endsM.slice(0, -1).find((wireM) => layAtWireM(measured, wireM) === lay)
    const underWater = firstOn('water')
    if (underWater !== undefined) flag({ code: 'splice-under-water' }, underWater)
    const onSpan = firstOn('overhead')
    if (onSpan !== undefined) flag({ code: 'splice-on-span' }, onSpan)
  }
  return flags
}
