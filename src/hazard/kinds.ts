import type { LayingAllowances } from '../catalog/laying-rates'
import type { HazardKind, Lay } from '../plan/plan'

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
}

/** All that the program knows of one kind of hazard. */
export interface HazardTrade {
  /** As a person reads it: on tags, maps and papers, where it has no name. */
  readonly word: string
  /** The same in a legend, where room is scarce. */
  readonly legend: string
  /** What maps commonly call it. */
  readonly known: RegExp
  readonly stroke: Stroke
  readonly fill: Fill
  /** Whether a splice should keep off a crossing, where it cannot be got at. */
  readonly keepsSplicesOff: boolean
  readonly at: Readonly<Record<Lay, AtCrossing>>
  readonly route: RouteRule
}

const BURIED: AtCrossing = { takes: 'buriedCrossingMin' }
const OVERHEAD: AtCrossing = { takes: 'overheadCrossingMin' }
const RAILS: AtCrossing = { takes: 'railwayCrossingMin' }

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
    legend: 'power line',
    known: /power|pylon|transmission|high.?voltage/,
    stroke: 'beaded',
    fill: 'none',
    keepsSplicesOff: true,
    at: { surface: {}, overhead: {}, buried: {}, water: {} },
    route: {
      toll: { usual: 150, asks: 'Crossing a power line' },
      near: { usual: 1.5, withinM: 100, asks: 'Beside a power line, times' },
    },
  },
  railway: {
    word: 'railway',
    legend: 'railway',
    known: /rail|tram/,
    stroke: 'ticked',
    fill: 'none',
    keepsSplicesOff: true,
    at: { surface: RAILS, overhead: OVERHEAD, buried: RAILS, water: RAILS },
    route: {
      toll: { usual: 600, asks: 'Crossing a railway' },
      laid: { lay: 'buried', sideM: 6 },
    },
  },
  track: {
    word: 'track',
    legend: 'track',
    known: /track|path|trail|bridleway|footway/,
    stroke: 'dashed',
    fill: 'none',
    keepsSplicesOff: true,
    at: { surface: BURIED, overhead: OVERHEAD, buried: BURIED, water: {} },
    route: {
      toll: { usual: 150, asks: 'Crossing a track' },
      near: { ...BESIDE, asks: 'Beside a track, times' },
      laid: { lay: 'buried', sideM: 4 },
    },
  },
  road: {
    word: 'road',
    legend: 'road',
    known: /highway|road|street|motorway|trunk|primary|secondary|tertiary|residential|unclassified|service/,
    stroke: 'double',
    fill: 'none',
    keepsSplicesOff: true,
    at: { surface: BURIED, overhead: OVERHEAD, buried: BURIED, water: {} },
    route: {
      toll: { usual: 230, asks: 'Crossing a road' },
      near: { ...BESIDE, asks: 'Beside a road, times' },
      laid: { lay: 'buried', sideM: 6 },
    },
  },
  water: {
    word: 'water',
    legend: 'water',
    known: /water|river|stream|canal|lake|ditch|drain|pond|reservoir/,
    stroke: 'broad',
    fill: 'tint',
    keepsSplicesOff: true,
    at: { surface: {}, overhead: OVERHEAD, buried: {}, water: {} },
    route: {
      toll: { usual: 230, asks: 'Crossing a stream' },
      inside: { usual: 6, asks: 'Through water, times' },
      laid: { lay: 'water', sideM: 8 },
    },
  },
  'keep-out': {
    word: 'keep-out area',
    legend: 'keep out',
    known: /keep.?out|danger|military|restricted|forbidden|range|private/,
    stroke: 'chained',
    fill: 'hatch',
    keepsSplicesOff: false,
    at: { surface: {}, overhead: {}, buried: {}, water: {} },
    route: { isBarred: true },
  },
}

/** What a hazard is called: by its name, or by what it is. */
export const hazardName = (name: string, kind: HazardKind): string => name || HAZARDS[kind].word
