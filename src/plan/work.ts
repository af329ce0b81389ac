import { DEFAULT_LAYING } from '../catalog/laying-rates'
import { GEAR_KG, TEST_SET_KG } from '../catalog/line-gear'
import { part, unless } from '../schema/kept'
import type { Limit } from '../schema/limit'
import { figure } from '../schema/plain-values'
import type { Held } from '../schema/schema'

/** What one figure of the work is, and where it must lie. */
interface WorkFigure {
  readonly what: string
  readonly min: number
  readonly max: number
  readonly unit: WorkUnit
  readonly whole?: true
  /** What holds in a plan that is silent about it. */
  readonly usual: number
}

export type WorkUnit = '' | 'min' | 'kg' | 'km/h' | 'm' | '%' | 'times'

const foot = DEFAULT_LAYING.foot
const rate = (where: string, usual: number): WorkFigure => ({
  what: `The rate ${where}`,
  min: 0.01,
  max: 50,
  unit: 'km/h',
  usual,
})
const minutes = (what: string, usual: number): WorkFigure => ({ what, min: 0, max: 1440, unit: 'min', usual })
const mass = (what: string, usual: number): WorkFigure => ({ what, min: 0, max: 500, unit: 'kg', usual })

/** The figures of the work: how the net is used, by whom it is laid and what is carried. A person can change each of them. */
export const WORK = {
  talkMinutesPerDay: minutes('The talk a day', 60),
  ringMinutesPerDay: minutes('The ringing a day', 2),
  crews: {
    what: 'The number of crews',
    min: 1,
    max: 50,
    unit: '',
    whole: true,
    usual: 1,
  },
  peoplePerCrew: {
    what: 'The people in a crew',
    min: 1,
    max: 50,
    unit: '',
    whole: true,
    usual: foot.people,
  },
  night: {
    what: 'The work by night',
    min: 0,
    max: 1,
    unit: '',
    whole: true,
    usual: 0,
  },
  nightFactor: {
    what: 'The stretch by night',
    min: 1,
    max: 10,
    unit: 'times',
    usual: foot.nightFactor,
  },
  surfaceKmPerHour: rate('on the surface', foot.rates.surface.kmPerHour),
  overheadKmPerHour: rate('overhead', foot.rates.overhead.kmPerHour),
  buriedKmPerHour: rate('buried', foot.rates.buried.kmPerHour),
  waterKmPerHour: rate('in water', foot.rates.water.kmPerHour),
  recoveryKmPerHour: {
    ...rate('of recovery', foot.recoveryKmPerHour),
  },
  walkKmPerHour: {
    what: 'The pace of walking',
    min: 0.5,
    max: 80,
    unit: 'km/h',
    usual: foot.walkKmPerHour,
  },
  climbMPerHour: {
    what: 'The climb that takes an hour',
    min: 50,
    max: 5000,
    unit: 'm',
    usual: foot.climbMPerHour,
  },
  buriedCrossingMin: minutes('The time for a buried crossing', foot.buriedCrossingMin),
  overheadCrossingMin: minutes('The time for a crossing overhead', foot.overheadCrossingMin),
  railwayCrossingMin: minutes('The time for a railway', foot.railwayCrossingMin),
  spliceMin: minutes('The time for a splice', foot.spliceMin),
  stationMin: minutes('The time for a station', foot.stationMin),
  personLimitKg: {
    ...mass('The most for one person', 22),
    min: 1,
  },
  setKg: mass('The mass of a set', 4.1),
  cellsPerSet: {
    what: 'The cells in a set',
    min: 0,
    max: 20,
    unit: '',
    whole: true,
    usual: 2,
  },
  cellKg: mass('The mass of a cell', 0.14),
  supplyKg: mass('The mass of a supply', 5),
  spareBatteriesPct: {
    what: 'The spare batteries',
    min: 0,
    max: 1000,
    unit: '%',
    usual: 100,
  },
  toolsKg: mass('The tools of a crew', 12),
  testSetKg: mass('The mass of a test set', TEST_SET_KG),
  tagKg: mass('The mass of a tag', GEAR_KG.tag),
  rodKg: mass('The mass of a ground rod', GEAR_KG.rod),
  lanceKg: mass('The mass of a lance', GEAR_KG.lance),
  guyKg: mass('The mass of a guy', GEAR_KG.guy),
  stakeKg: mass('The mass of a stake', GEAR_KG.stake),
  weightKg: mass('The mass of a weight for wire in water', GEAR_KG.weight),
  reelPct: {
    what: 'The mass of a reel',
    min: 0,
    max: 200,
    unit: '%',
    usual: 15,
  },
  testEveryM: {
    what: 'The way between test points',
    min: 100,
    max: 100_000,
    unit: 'm',
    usual: 2000,
  },
  tagEveryM: {
    what: 'The way between tags',
    min: 20,
    max: 100_000,
    unit: 'm',
    usual: 2000,
  },
} as const satisfies Readonly<Record<string, WorkFigure>>

export type WorkField = keyof typeof WORK

export const WORK_FIELDS = Object.keys(WORK) as readonly WorkField[]

const member = ({ usual, ...limit }: WorkFigure) => unless(usual, figure<Limit>(limit))

/** What a plan says of the work: only the figures that differ from the usual ones. */
export const WORK_MEMBERS = part(
  'The member "work"',
  Object.fromEntries(WORK_FIELDS.map((field) => [field, member(WORK[field])])) as {
    readonly [F in WorkField]: ReturnType<typeof member>
  },
)

export type Work = Held<typeof WORK_MEMBERS>

/** A figure of the work: the plan's own, or the usual one. */
export const workOf = (plan: { readonly work?: Work }, field: WorkField): number =>
  plan.work?.[field] ?? WORK[field].usual
