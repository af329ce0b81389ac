import type { FaultElement } from '../field/fault-ports'
import { STEP_NEPERS } from '../field/gauge'
import type { Far, What } from '../field/probe'
import { earthObservation } from './earth-reading'
import { isReading, type Known, type MeterReading } from './evidence'
import type { LikelyStretch } from './likely-stretches'
import { type Bench, type Manner, meterObservation } from './observation'
import type { Particle } from './particles'
import type { Place, PlaceOnLine } from './walking'

/** What to measure, as evidence that only lacks its value. */
export interface Take {
  readonly what: What
  readonly far: Far
  readonly toward: string
  /** This wire against the earth; absent: both wires. */
  readonly wire?: 'a' | 'b'
}

/** A reading that could be taken, what it would be under each fault that is likely, nepers, and how far off it may be. */
export interface Prospect {
  readonly take: Take
  readonly nepers: Float64Array
  readonly sigma: number
}

/** A place where the pair can be opened, and what is worth reading there. */
export interface Stop {
  readonly at: Place
  readonly prospects: readonly Prospect[]
}

/** What is worth reading where such a fault is likely. */
const WORTH: Readonly<Record<Exclude<FaultElement, 'none'> | 'earth', readonly Omit<Take, 'toward'>[]>> = {
  across: [
    { what: 'loopOhms', far: 'open' },
    { what: 'loopOhms', far: 'short' },
  ],
  along: [{ what: 'loopOhms', far: 'short' }],
  broken: [{ what: 'nanoF', far: 'open' }],
  earth: [
    { what: 'loopOhms', far: 'open', wire: 'a' },
    { what: 'loopOhms', far: 'open', wire: 'b' },
  ],
}

/** A kind of fault less likely than this is not what a reading is chosen for. */
const LEAST_WORTH = 0.1
const USUAL_PCT = 1
const MOST_STATIONS = 24
const MOST_ENDS = 4
/** In a net of many lines each station takes long to reckon: of so many lines on fewer of them, the nearest. */
const MANY_LINES = 40
const FEW_STATIONS = 10
const PLACES_MINDED = 3
const TAGS_INSIDE = 6

/** Where one could measure what, and what that would tell of faults that are drawn as likely as they are. */
export function stopsOf(
  bench: Bench,
  evidence: readonly Known[],
  particles: readonly Particle[],
  tags: readonly PlaceOnLine[],
  places: readonly LikelyStretch[],
  walkM: (to: Place) => number,
): readonly Stop[] {
  const manner = commonest(particles)
  const readings = evidence.filter(isReading)
  const taken = readings.at(-1)
  const as = {
    value: 100,
    meterPct: taken?.meterPct ?? USUAL_PCT,
    ...(taken?.tempC !== undefined && { tempC: taken.tempC }),
    ...(taken?.weather !== undefined && { weather: taken.weather }),
  }
  const worth = worthReading(particles)
  return standing(bench, tags, places, walkM).map(({ at, towards }) => ({
    at,
    prospects: towards.flatMap(({ toward, isBeyond }) =>
      worth.flatMap((how): Prospect[] => {
        // With the far end open it is the same reading whichever station on that side is looked to.
        if (isBeyond && how.far === 'open') return []
        const place = typeof at === 'string' ? { at } : at
        const reading = { ...place, toward, ...how, ...as } as MeterReading
        if (readings.some((each) => isSame(each, reading))) return []
        const observation = (how.wire ? earthObservation : meterObservation)(bench, reading, manner)
        if (!observation) return []
        const nepers = Float64Array.from(particles, ({ line, wireM, hypothesis, ohms, nepers: more }) => {
          const values = observation.at(line, wireM, wireM).all(hypothesis, ohms)
          const [first] = values
          return more.reduce((sum, each, f) => sum + ((values[f + 1]! - first!) / STEP_NEPERS) * each, first!)
        })
        return [{ take: { ...how, toward }, nepers, sigma: observation.sigma }]
      }),
    ),
  }))
}

function worthReading(particles: readonly Particle[]) {
  const elements = (Object.keys(WORTH) as (keyof typeof WORTH)[]).filter((element) => {
    const own = particles.filter(
      ({ hypothesis }) => (hypothesis.toEarth ? 'earth' : hypothesis.element) === element,
    )
    return own.length >= LEAST_WORTH * particles.length
  })
  const all = elements.flatMap((element) => WORTH[element])
  return all.filter((how, k) => all.findIndex((each) => isAlike(each, how)) === k)
}

const isAlike = (a: Omit<Take, 'toward'>, b: Omit<Take, 'toward'>): boolean =>
  a.what === b.what && a.far === b.far && a.wire === b.wire

const isSame = (a: MeterReading, b: MeterReading): boolean =>
  isAlike(a, b) &&
  a.toward === b.toward &&
  ('line' in a
    ? 'line' in b && a.line === b.line && Math.abs(a.wireM - b.wireM) < 1
    : 'at' in b && a.at === b.at)

/** The way in which most of the faults that are likely take the evidence. */
const commonest = (particles: readonly Particle[]): Manner => {
  const counts = new Map<Manner, number>()
  for (const { manner } of particles) counts.set(manner, (counts.get(manner) ?? 0) + 1)
  return [...counts].sort((a, b) => b[1] - a[1])[0]![0]
}

interface Toward {
  readonly toward: string
  /** A last station of the net, over others: all the wire up to it is read at once. */
  readonly isBeyond: boolean
}

/** Ends of the circuit and its joints, the nearest of many, and the tags nearest to what is in question. */
function standing(
  { model }: Bench,
  tags: readonly PlaceOnLine[],
  places: readonly LikelyStretch[],
  walkM: (to: Place) => number,
): readonly { readonly at: Place; readonly towards: readonly Toward[] }[] {
  const linesAt = (node: number) =>
    model.lines.filter(({ from, to, wireM }) => wireM > 0 && (from === node || to === node))
  const ends = model.stations.filter((_, node) => linesAt(node).length === 1).slice(0, MOST_ENDS)
  const stations = model.stations.map((at, node) => {
    const next = linesAt(node).map((line) => model.stations[line.from === node ? line.to : line.from]!)
    const beyond = ends.filter((end) => end !== at && !next.includes(end))
    return {
      at,
      towards: [
        ...next.map((toward) => ({ toward, isBeyond: false })),
        ...beyond.map((toward) => ({ toward, isBeyond: true })),
      ],
    }
  })
  const lengthM = new Map(model.lines.filter(({ wireM }) => wireM > 0).map(({ id, wireM }) => [id, wireM]))
  const near = places.slice(0, PLACES_MINDED).flatMap(({ line, fromM, toM }) => {
    // At the ends of a line stands a station.
    const own = tags.filter((tag) => tag.line === line && tag.wireM > 1 && tag.wireM < lengthM.get(line)! - 1)
    own.sort((a, b) => a.wireM - b.wireM)
    const inside = own.filter(({ wireM }) => wireM > fromM && wireM < toM)
    const before = own.filter(({ wireM }) => wireM <= fromM).slice(-2)
    const after = own.filter(({ wireM }) => wireM >= toM).slice(0, 2)
    const every = Math.max(1, Math.ceil(inside.length / TAGS_INSIDE))
    return [...before, ...inside.filter((_, k) => k % every === 0), ...after]
  })
  const onLines = [...new Set(near)].map(({ line, wireM }) => ({
    at: { line, wireM },
    towards: (['from', 'to'] as const).map((toward) => ({ toward, isBeyond: false })),
  }))
  const most = model.lines.length > MANY_LINES ? FEW_STATIONS : MOST_STATIONS
  const nearest = stations.length > most ? stations.sort((a, b) => walkM(a.at) - walkM(b.at)) : stations
  return [...nearest.slice(0, most), ...onLines]
}
