/** How a stretch of line is built: the lays of a plan. */
type Build = 'surface' | 'overhead' | 'buried' | 'water'

/** How the wire is brought forward. */
export type Means = 'foot' | 'vehicle'

/** How fast a crew lays wire by day on level ground. */
export interface LayingRate {
  readonly lay: Build
  readonly means: Means
  readonly kmPerHour: number
  readonly crew: number
  /** No handbook figure was found: a guess that a person may change. */
  readonly isAllowance: boolean
  readonly source: string
}

const NONE_FOUND = 'allowance, from memory: no handbook figure was found'

export const LAYING_RATES: readonly LayingRate[] = [
  {
    lay: 'surface',
    means: 'foot',
    kmPerHour: 2.5,
    crew: 4,
    isAllowance: true,
    source: `${NONE_FOUND}; 2 to 3 km/h with ties and tags. Crew of 4: Popular Science Monthly 90 (1917), p. 820.`,
  },
  {
    lay: 'surface',
    means: 'vehicle',
    kmPerHour: 7,
    crew: 6,
    isAllowance: true,
    source:
      'allowance: walking pace with linemen dressing the line, from memory; a horse cable wagon paid out at 6 mph (9.7 km/h) with a crew of 7, Popular Science Monthly 90 (1917), p. 820.',
  },
  {
    lay: 'overhead',
    means: 'foot',
    kmPerHour: 0.75,
    crew: 6,
    isAllowance: true,
    source: `${NONE_FOUND}; 0.5 to 1 km/h on trees and lance poles`,
  },
  {
    lay: 'overhead',
    means: 'vehicle',
    kmPerHour: 0.75,
    crew: 6,
    isAllowance: true,
    source: `${NONE_FOUND}; the poles, not the carriage, set the pace`,
  },
  {
    lay: 'buried',
    means: 'foot',
    kmPerHour: 0.1,
    crew: 4,
    isAllowance: true,
    source: `${NONE_FOUND}; by spade`,
  },
  {
    lay: 'buried',
    means: 'vehicle',
    kmPerHour: 4,
    crew: 4,
    isAllowance: true,
    source:
      'allowance: half of what the cable plow LC-61 does at most, 5 mph (museum note on TM 11-370); crew from memory.',
  },
  { lay: 'water', means: 'foot', kmPerHour: 0.5, crew: 4, isAllowance: true, source: NONE_FOUND },
  {
    lay: 'water',
    means: 'vehicle',
    kmPerHour: 1,
    crew: 4,
    isAllowance: true,
    source: `${NONE_FOUND}; from a boat`,
  },
]

/** Everything that the hours of a plan follow from; a person can change each value. */
export interface LayingAllowances {
  readonly means: Means
  /** Crews that work at the same time, and the people in each. */
  readonly crews: number
  readonly people: number
  readonly rates: Readonly<Record<Build, { readonly kmPerHour: number; readonly crew: number }>>
  /** Picking wire up again, km/h. */
  readonly recoveryKmPerHour: number
  /** Climb that takes a crew one hour besides the distance, m. */
  readonly climbMPerHour: number
  /** Walking with a load and back without one, km/h. */
  readonly walkKmPerHour: number
  /** Time that each crossing adds, by what is crossed and how, minutes. */
  readonly buriedCrossingMin: number
  readonly overheadCrossingMin: number
  readonly railwayCrossingMin: number
  /** Time for one splice with its test, minutes. */
  readonly spliceMin: number
  /** Time to put a station in and test it, minutes. */
  readonly stationMin: number
  readonly isNight: boolean
  /** By how much the night stretches all of it. */
  readonly nightFactor: number
}

/** Where each of the allowances besides the laying rates comes from. */
export const LAYING_SOURCES: Readonly<
  Record<Exclude<keyof LayingAllowances, 'means' | 'rates' | 'isNight' | 'crews'>, string>
> = {
  people:
    'four on a man-pack team: Popular Science Monthly 90 (1917), p. 820; that fewer than a lay takes are slower in proportion is an allowance',
  recoveryKmPerHour:
    'on foot an allowance, from memory; by vehicle two thirds of the 10 to 12 mph of an experienced crew with a powered winch in open ground (US Army photograph caption, Camp McCoy 1951)',
  walkKmPerHour:
    'allowance: three miles an hour on the level (W. W. Naismith, Scottish Mountaineering Club Journal 2 (1892), p. 136), less for the load one way',
  climbMPerHour:
    'Naismith’s rule, one hour for 2000 ft of ascent: W. W. Naismith, Scottish Mountaineering Club Journal 2 (1892), p. 136',
  buriedCrossingMin:
    '3 to 4 minutes for a shallow trench across a track: Popular Science Monthly 90 (1917), p. 820',
  overheadCrossingMin: '5 to 6 minutes with poles of 18 ft: Popular Science Monthly 90 (1917), p. 820',
  railwayCrossingMin:
    'allowance, from memory: a small trench in the ballast, stakes and tags; waiting for permission is not counted',
  spliceMin: 'allowance, from memory',
  stationMin: 'allowance, from memory',
  nightFactor:
    'half as much again: Navy combat training manual 14234, ch. 8, for wire obstacles; taken by analogy',
}

const ratesBy = (means: Means): LayingAllowances['rates'] => {
  const rate = (lay: Build) => {
    const found = LAYING_RATES.find((one) => one.lay === lay && one.means === means)
    if (!found) throw new Error(`no rate for ${lay} by ${means}`)
    return { kmPerHour: found.kmPerHour, crew: found.crew }
  }
  return {
    surface: rate('surface'),
    overhead: rate('overhead'),
    buried: rate('buried'),
    water: rate('water'),
  }
}

const defaults = (means: Means): LayingAllowances => ({
  means,
  crews: 1,
  people: 4,
  rates: ratesBy(means),
  recoveryKmPerHour: means === 'foot' ? 2 : 12,
  climbMPerHour: 600,
  walkKmPerHour: means === 'foot' ? 4 : 15,
  buriedCrossingMin: 3.5,
  overheadCrossingMin: 5.5,
  railwayCrossingMin: 20,
  spliceMin: 10,
  stationMin: 15,
  isNight: false,
  nightFactor: 1.5,
})

/** What a plan starts with, on foot and by vehicle. */
export const DEFAULT_LAYING: Readonly<Record<Means, LayingAllowances>> = {
  foot: defaults('foot'),
  vehicle: defaults('vehicle'),
}
