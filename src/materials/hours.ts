import { DEFAULT_LAYING, type LayingAllowances } from '../catalog/laying-rates'
import { HAZARDS } from '../hazard/kinds'
import type { MeasuredLeg, MeasuredLine } from '../measure/measured'
import { memoryOfEach, memoryOfRow, remembering } from '../memo'
import type { LineId, StationId } from '../plan/id'
import { inRow, lineRowOf } from '../plan/line-row'
import type { HazardKind, Lay, Line, Plan } from '../plan/plan'
import type { Carrying } from './carrying'
import type { Piece } from './spool-plan'

/** What a line crosses, and how it is laid there. */
export interface CrossingWork {
  readonly kind: HazardKind
  readonly lay: Lay
}

/** Time for one line, h, and the crew that it takes to go at the handbook's rates. */
export interface LineHours {
  readonly line: LineId
  readonly crew: number
  readonly layingH: number
  readonly climbingH: number
  readonly crossingsH: number
  readonly splicesH: number
  /** Walking out, back for every load more, and home. */
  readonly carryingH: number
  /** All of the above, by night if it is night. */
  readonly totalH: number
  readonly recoveryH: number
}

/** How fast this crew lays or takes up wire, from what it has done. */
export interface LearnedRate {
  readonly what: Lay | 'recovery'
  /** As the plan has it, and as it is taken to be now, for a full crew by day. */
  readonly plannedKmPerHour: number
  readonly kmPerHour: number
  /** Over how much ground that is known, and how long it took. */
  readonly groundM: number
  readonly hours: number
}

/** Time for the whole net when its crews share out the lines and the stations, each done by one crew. */
export interface NetHours {
  readonly lines: readonly LineHours[]
  readonly crews: number
  /** People in a crew, and how many the most exacting line takes. */
  readonly crew: number
  readonly crewWanted: number
  readonly isNight: boolean
  readonly stationsH: number
  readonly totalH: number
  readonly recoveryH: number
  /** Σ hours · crew of each line, and of the stations one person each. */
  readonly personHours: number
  /** Rates that rest on what this crew has done. */
  readonly learned?: readonly LearnedRate[]
}

/**
 * Height climbed on a leg, m, as far as its lengths tell: half of the height gained and lost by ground that is longer than the map.
 *
 * ½ √(ground² − map²): exact for an even slope walked as often up as down.
 */
const climbM = (leg: MeasuredLeg): number => Math.sqrt(Math.max(0, leg.groundM ** 2 - leg.mapM ** 2)) / 2

const crossingMin = ({ kind, lay }: CrossingWork, allowances: LayingAllowances): number => {
  const { takes } = HAZARDS[kind].at[lay]
  return takes ? allowances[takes] : 0
}

/** Rate of a lay, km/h: a crew with fewer people than it takes is slower in proportion. */
export function rateKmPerHour(lay: Lay, { rates, people }: LayingAllowances): number {
  const { kmPerHour, crew } = rates[lay]
  return kmPerHour * Math.min(1, people / crew)
}

/** The crew that is free first, of those that are done at these hours. */
export function freeFirst(doneH: ArrayLike<number>): number {
  let first = 0
  for (let crew = 1; crew < doneH.length; crew++) if (doneH[crew]! < doneH[first]!) first = crew
  return first
}

/**
 * When the last of several crews is done, h: the longest job first, each to the crew that is free first.
 *
 * Source: R. L. Graham, Bounds on multiprocessing timing anomalies, SIAM Journal on Applied Mathematics 17 (1969): at most a third
 * over the least there could be.
 */
export function sharedOutH(jobsH: Float64Array, crews: number): number {
  // An array of numbers alone is sorted by size, and many times faster.
  const sortedH = jobsH.toSorted()
  const doneH = new Float64Array(crews)
  for (let job = sortedH.length - 1; job >= 0; job--) doneH[freeFirst(doneH)]! += sortedH[job]!
  return doneH.reduce((most, each) => Math.max(most, each), 0)
}

const NO_CROSSINGS: readonly CrossingWork[] = []

const NO_PIECES: readonly Piece[] = []

const remembered = memoryOfEach<MeasuredLine, LineHours>()
const rememberedRow = memoryOfRow<Line, LineHours>()

/**
 * Time to lay one line and to take it up again, h.
 *
 * Each leg at the rate of its lay over the ground, an hour more for each so many metres of climb, minutes for each crossing and
 * each splice, and the walking that carrying takes; all of it stretched by night. A line of several pairs is laid pair by pair. To
 * take it up, the same loads are walked home.
 *
 * Sources: the rates carry their own. Range: a plan's order of magnitude; the ground and the crew decide.
 *
 * @param walkM walking besides the laying, m: see `carryingOf`
 */
export function hoursOfLine(
  measured: MeasuredLine,
  pairs: number,
  splices: number,
  crossings: readonly CrossingWork[] = NO_CROSSINGS,
  allowances: LayingAllowances = DEFAULT_LAYING.foot,
  walkM = 0,
): LineHours {
  return remembered(measured, [pairs, splices, crossings, allowances, walkM], () =>
    reckon(measured, pairs, splices, crossings, allowances, walkM),
  )
}

function reckon(
  measured: MeasuredLine,
  pairs: number,
  splices: number,
  crossings: readonly CrossingWork[],
  allowances: LayingAllowances,
  walkM: number,
): LineHours {
  const stretch = allowances.isNight ? allowances.nightFactor : 1
  const sum = (of: (leg: MeasuredLeg) => number) => measured.legs.reduce((total, leg) => total + of(leg), 0)
  const layingH = pairs * sum((leg) => leg.groundM / 1000 / rateKmPerHour(leg.lay, allowances))
  const climbingH = (pairs * sum(climbM)) / allowances.climbMPerHour
  const crossingsH = crossings.reduce((total, one) => total + crossingMin(one, allowances), 0) / 60
  const splicesH = (splices * allowances.spliceMin) / 60
  const carryingH = walkM / 1000 / allowances.walkKmPerHour
  return {
    line: measured.id,
    crew: measured.legs.reduce((most, leg) => Math.max(most, allowances.rates[leg.lay].crew), 1),
    layingH,
    climbingH,
    crossingsH,
    splicesH,
    carryingH,
    totalH: stretch * (layingH + climbingH + crossingsH + splicesH + carryingH),
    recoveryH:
      stretch *
      (pairs *
        (measured.groundM / 1000 / allowances.recoveryKmPerHour + sum(climbM) / allowances.climbMPerHour) +
        carryingH),
  }
}

/** How many stations have a telephone. */
const stationsWithSets = remembering((circuits: Plan['circuits']): number => {
  const withSets = new Set<StationId>()
  for (const { sets } of circuits.values()) for (const id of sets.keys()) withSets.add(id)
  return withSets.size
})

/**
 * Time for every line of a plan, and for its stations: see `hoursOfLine`.
 *
 * @param crossings of each line, in the order of the lines; so is `carrying`
 */
export function hoursOfPlan(
  plan: Plan,
  measured: ReadonlyMap<LineId, MeasuredLine>,
  pieces: ReadonlyMap<LineId, readonly Piece[]>,
  crossings: readonly (readonly CrossingWork[])[] = [],
  allowances: LayingAllowances = DEFAULT_LAYING.foot,
  carrying: readonly Carrying[] = [],
): NetHours {
  const { lines: row } = lineRowOf(plan)
  const lengths = inRow(row, measured)
  const cut = inRow(row, pieces)
  const lines = rememberedRow(row, [allowances], [lengths, cut, crossings, carrying], (line, place) => {
    const own = cut[place] ?? NO_PIECES
    const pairsLaid = own.length < 2 ? own.length : new Set(own.map((piece) => piece.pair)).size
    const splices = own.length - pairsLaid
    return hoursOfLine(
      lengths[place]!,
      line.pairs,
      splices,
      crossings[place],
      allowances,
      carrying[place]?.walkM,
    )
  })
  const stations = stationsWithSets(plan.circuits)
  const stationH = ((allowances.isNight ? allowances.nightFactor : 1) * allowances.stationMin) / 60
  const stationsH = stations * stationH
  const jobsH = new Float64Array(lines.length + stations).fill(stationH)
  const recoveriesH = new Float64Array(lines.length)
  for (let place = 0; place < lines.length; place++) {
    jobsH[place] = lines[place]!.totalH
    recoveriesH[place] = lines[place]!.recoveryH
  }
  const { crews, people, isNight } = allowances
  return {
    lines,
    crews,
    crew: people,
    crewWanted: lines.reduce((most, line) => Math.max(most, line.crew), 0),
    isNight,
    stationsH,
    totalH: sharedOutH(jobsH, crews),
    recoveryH: sharedOutH(recoveriesH, crews),
    personHours: lines.reduce((sum, line) => sum + line.totalH, 0) * people + stationsH,
  }
}
