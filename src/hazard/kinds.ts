import { CROSSING_PRACTICE, HEIGHT_OVER } from '../catalog/crossing-practice'
import type { LayingAllowances } from '../catalog/laying-rates'
import { isolated } from '../isolated'
import type { HazardKind, Lay } from '../plan/plan'
import type { Direction, HazardNote, MetCrossing } from './crossing-notes'
import {
  atPower,
  besidePower,
  keptOut,
  onRails,
  onRoad,
  onTrack,
  onWater,
  overRails,
  overTraffic,
} from './judge-crossing'
import type { Beside } from './stretches-beside'

/** How a hazard is drawn, on the map and on paper: two strokes, the bed and what lies on it. The style sheets name them. */
type Stroke = 'double' | 'dashed' | 'ticked' | 'broad' | 'beaded' | 'chained'

/** How an area is filled on the map. */
type Fill = 'none' | 'tint' | 'hatch'

/** A price of a route, in metres of easy ground, that a person can change; and how it is asked for. */
interface Price {
  readonly usual: number
  readonly asks: string
}

/** What a hazard is to a route: barred, or paid for. */
interface RouteRule {
  readonly isBarred?: true
  /** Crossing what is drawn as a line, once. */
  readonly toll?: Price
  /** Factor on a metre inside an area of it, in the place of a toll. */
  readonly inside?: Price
  /** Factor on a metre within a distance of it, m to each side. */
  readonly near?: Price & { readonly withinM: number }
  /** How a route is laid across it, and how far to each side of its middle, m; over the surface where nothing is said. */
  readonly laid?: { readonly lay: Lay; readonly sideM: number }
}

/** Which of the allowances for work a crossing takes. */
type CrossingTime = Extract<keyof LayingAllowances, `${string}CrossingMin`>

/** What the program knows of wire that crosses a hazard with one lay. */
interface AtCrossing {
  /** The time it takes; none of its own where nothing is said. */
  readonly takes?: CrossingTime
  /** What is amiss there; nothing ever where this is left out. */
  readonly judge?: (met: MetCrossing) => HazardNote | undefined
  /** What the crew does there, where nothing is amiss. */
  readonly does?: Direction
}

/** What is judged where a line comes within a distance of a hazard, m. */
interface BesideRule {
  readonly withinM: number
  readonly judge: (stretch: Beside, isCrossed: boolean) => readonly HazardNote[]
}

/** All that the program knows of one kind of hazard. */
export interface HazardTrade {
  /** As a person reads it: on tags, maps and papers, where it has no name. */
  readonly word: string
  /** The same in a sentence that names no other. */
  readonly one: string
  /** The same in a legend, where room is scarce. */
  readonly legend: string
  /** What maps commonly call it. */
  readonly known: RegExp
  readonly stroke: Stroke
  readonly fill: Fill
  /** Drawn as an area where the hand only says that it is done: what people keep out of has an inside. */
  readonly endsAsArea?: true
  /** Whether a splice should keep off a crossing, where it cannot be got at. */
  readonly keepsSplicesOff: boolean
  readonly at: Readonly<Record<Lay, AtCrossing>>
  readonly beside?: BesideRule
  readonly route: RouteRule
}

const BURIED = { takes: 'buriedCrossingMin' } as const
const OVERHEAD = { takes: 'overheadCrossingMin' } as const
const RAILS = { takes: 'railwayCrossingMin' } as const

const { roadDepthM, roadEdgeM, trackDepthM, railStakeM, powerBesideM } = CROSSING_PRACTICE
const POWER: AtCrossing = { judge: atPower }
const BARRED: AtCrossing = { judge: keptOut }

/** Along a road or a track a crew walks easily and finds its way back. Common practice. */
const BESIDE = { usual: 0.8, withinM: 30 }

/**
 * The kinds of hazards, each with all that is known of it. A kind more is an entry more; `HAZARD_KINDS` in the plan names it for the
 * file. What a file calls a thing is looked for in this order: a power line beside a railway is a power line.
 *
 * Words of maps: common practice. Tolls: a buried track crossing takes 3 to 4 minutes and an overhead one 5 to 6 (Popular Science
 * Monthly 90, 1917, p. 820), at 2.5 km/h of laying; railway, power line and factors: common practice. A route's `sideM`: half the width
 * of a road, a track or a bed of rails and a metre past its edge (FM 24-20, from memory); a brook and its banks, common practice.
 */
export const HAZARDS: Readonly<Record<HazardKind, HazardTrade>> = {
  'power-line': {
    word: 'power line',
    one: 'a power line',
    legend: 'power line',
    known: /power|pylon|transmission|high.?voltage/,
    stroke: 'beaded',
    fill: 'none',
    keepsSplicesOff: true,
    at: { surface: POWER, overhead: POWER, buried: POWER, water: POWER },
    beside: { withinM: powerBesideM, judge: besidePower },
    route: {
      toll: { usual: 150, asks: 'Crossing a power line' },
      near: { usual: 1.5, withinM: 100, asks: 'Beside a power line, times' },
    },
  },
  railway: {
    word: 'railway',
    one: 'a railway',
    legend: 'railway',
    known: /rail|tram/,
    stroke: 'ticked',
    fill: 'none',
    keepsSplicesOff: true,
    at: {
      surface: { ...RAILS, judge: onRails },
      overhead: { ...OVERHEAD, judge: overRails },
      buried: { ...RAILS, does: { code: 'pass-under-rails', stakeM: railStakeM } },
      water: { ...RAILS, judge: onRails },
    },
    route: {
      toll: { usual: 600, asks: 'Crossing a railway' },
      laid: { lay: 'buried', sideM: 6 },
    },
  },
  track: {
    word: 'track',
    one: 'a track',
    legend: 'track',
    known: /track|path|trail|bridleway|footway/,
    stroke: 'dashed',
    fill: 'none',
    keepsSplicesOff: true,
    at: {
      surface: { ...BURIED, judge: onTrack },
      overhead: {
        ...OVERHEAD,
        judge: overTraffic('low-over-track', HEIGHT_OVER.sideRoad),
        does: { code: 'hang-over-traffic', clearM: HEIGHT_OVER.sideRoad.metres },
      },
      buried: { ...BURIED, does: { code: 'bury-under-track', depthM: trackDepthM } },
      water: { judge: onTrack },
    },
    route: {
      toll: { usual: 150, asks: 'Crossing a track' },
      near: { ...BESIDE, asks: 'Beside a track, times' },
      laid: { lay: 'buried', sideM: 4 },
    },
  },
  road: {
    word: 'road',
    one: 'a road',
    legend: 'road',
    known: /highway|road|street|motorway|trunk|primary|secondary|tertiary|residential|unclassified|service/,
    stroke: 'double',
    fill: 'none',
    keepsSplicesOff: true,
    at: {
      surface: { ...BURIED, judge: onRoad },
      overhead: {
        ...OVERHEAD,
        judge: overTraffic('low-over-road', HEIGHT_OVER.mainRoad),
        does: { code: 'hang-over-traffic', clearM: HEIGHT_OVER.mainRoad.metres },
      },
      buried: { ...BURIED, does: { code: 'bury-under-road', depthM: roadDepthM, pastEdgeM: roadEdgeM } },
      water: { judge: onRoad },
    },
    route: {
      toll: { usual: 230, asks: 'Crossing a road' },
      near: { ...BESIDE, asks: 'Beside a road, times' },
      laid: { lay: 'buried', sideM: 6 },
    },
  },
  water: {
    word: 'water',
    one: 'water',
    legend: 'water',
    known: /water|river|stream|canal|lake|ditch|drain|pond|reservoir/,
    stroke: 'broad',
    fill: 'tint',
    keepsSplicesOff: true,
    at: {
      surface: { judge: onWater },
      overhead: {
        ...OVERHEAD,
        judge: overTraffic('low-over-water', HEIGHT_OVER.water),
        does: { code: 'hang-over-water' },
      },
      buried: { does: { code: 'lead-under-water' } },
      water: { does: { code: 'lay-in-water' } },
    },
    route: {
      toll: { usual: 230, asks: 'Crossing a stream' },
      inside: { usual: 6, asks: 'Through water, times' },
      laid: { lay: 'water', sideM: 8 },
    },
  },
  'keep-out': {
    word: 'keep-out area',
    one: 'a keep-out area',
    legend: 'keep out',
    known: /keep.?out|danger|military|restricted|forbidden|range|private/,
    stroke: 'chained',
    fill: 'hatch',
    endsAsArea: true,
    keepsSplicesOff: false,
    at: { surface: BARRED, overhead: BARRED, buried: BARRED, water: BARRED },
    route: { isBarred: true },
  },
}

/** What a hazard is called: by its name, or by what it is. */
export const hazardName = (name: string, kind: HazardKind): string => isolated(name) || HAZARDS[kind].word
