import type { Lack, Remark } from '../budget/circuit-notes'
import type { Check, CircuitRows, Verdict } from '../budget/rows'
import type { LineField } from '../field/line-field'
import type { Crossing } from '../hazard/crossings'
import type { NetHours } from '../materials/hours'
import type { LeftToDo } from '../materials/left-to-do'
import type { Loads } from '../materials/loads'
import type { Splice } from '../materials/splice-limits'
import type { Piece, WireSpools } from '../materials/spool-plan'
import type { LineTag } from '../measure/line-tags'
import type { CircuitId, LineId } from '../plan/id'
import type { Lay, Weather } from '../plan/plan'
import type { Caution } from './caution'
import type { Doubt } from './doubts'
import type { Change } from './remedy-changes'
import type { Switchboard } from './switchboard'

/** One line as the report shows it: every length in m, bearings true. */
export interface ReportLine {
  readonly id: LineId
  readonly name: string
  readonly mapM: number
  readonly groundM: number
  readonly laidM: number
  /** Electrical length: laid wire and both tails. */
  readonly wireM: number
  /** What a meter reads across one pair with the far end shorted: the loop at the plan's temperature, electrodes included. */
  readonly loopOhms: number
  /** Mass of the wire of all its pairs, kg. */
  readonly kg: number
  readonly legs: readonly {
    readonly mapM: number
    readonly groundM: number
    readonly onGrid: boolean
    readonly laidM: number
    readonly bearingDeg: number
    readonly lay: Lay
  }[]
  readonly pieces: readonly Piece[]
  /** What it crosses, from its start to its end. */
  readonly crossings: readonly Crossing[]
  /** Tags and test points from the line's start to its end. */
  readonly tags: readonly LineTag[]
  /** Splices by place, in the order in which the crew comes to them: pairs that are spliced at one place share it. */
  readonly splices: readonly (readonly [Splice, ...Splice[]])[]
  /** What was laid and read of it, and what that teaches. */
  readonly field: LineField
}

/** How many times longer every line could be until a check fails: 0 where no wire at all fails, at most 1000. */
export interface Reach {
  readonly factor: number
  /** `ringing A → B`, by station ids; empty where nothing fails up to 1000. */
  readonly limitedBy: string
  readonly check: Check | null
}

/** The corner of the envelope with least to spare, and its figures. */
export interface WorstCase extends CircuitRows {
  readonly verdict: Verdict
  readonly weather: Weather
  readonly wireTempC: number
  readonly limitedBy: string
  readonly check: Check | null
  readonly reach: Reach
}

/** Changes that the engine has tried and found to mend a circuit. */
export interface Remedy {
  readonly changes: readonly Change[]
  readonly verdict: Verdict
  readonly worst: Verdict
  /** What the tightest check would have to spare, in per cent of what it needs: today, and in the worst corner. */
  readonly marginPct: number
  readonly worstMarginPct: number
  readonly extraM: number
  readonly extraKg: number
  readonly extraSpools: number
}

export interface ReportCircuit extends CircuitRows {
  readonly id: CircuitId
  readonly name: string
  readonly verdict: Verdict
  readonly reach: Reach
  /** What no figure shows: what the circuit cannot do without, and what its people should know. */
  readonly missing: readonly Lack[]
  readonly notes: readonly Remark[]
  readonly worst: WorstCase
  readonly remedies: readonly Remedy[]
  /** Where a board or an exchange joins its lines. */
  readonly switchboard?: Switchboard
}

/** All of it for one plan: what the screen, the papers and the command line show. */
export interface Report {
  readonly title: string
  readonly lines: readonly ReportLine[]
  readonly circuits: readonly ReportCircuit[]
  readonly spools: readonly WireSpools[]
  readonly loads: Loads
  readonly hours: NetHours
  /** Where something was recorded: what is still to do. */
  readonly left?: LeftToDo
  readonly cautions: readonly Caution[]
  /** What can hardly be meant: for a person to look at. */
  readonly doubts: readonly Doubt[]
}
