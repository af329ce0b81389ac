import type { Wire } from '../catalog/wire'
import type { Crossing } from '../hazard/crossings'
import { hazardName } from '../hazard/kinds'
import { wireHeightM } from '../measure/catenary'
import { type Hazard, type Lay, type Line, type Plan, stationName, verticesOf } from '../plan/plan'
import type { GridGround } from '../terrain/ground-from-grids'
import { isSteep, type LegSlope, type Profile, profileAlong } from '../terrain/profile'
import { overheadLegOf } from './overhead-leg'

/** A point of a profile: how far out on the map, m, and how high, m. */
export interface ProfilePoint {
  readonly atM: number
  readonly heightM: number
}

export interface ProfileLeg extends LegSlope {
  readonly lay: Lay
  readonly isSteep: boolean
}

/** A span's support: the ground it stands on, and the wire at its top. */
export interface Support extends ProfilePoint {
  readonly topM: number
}

export interface ProfileCrossing {
  readonly atM: number
  readonly kind: Hazard['hazard']
  /** Its name, or what it is. */
  readonly name: string
}

/** The ground under one line and the wire over it, in metres. */
export interface LineProfile {
  readonly lengthM: number
  readonly ends: readonly [from: string, to: string]
  readonly ground: Profile
  readonly legs: readonly ProfileLeg[]
  /** The wire of each overhead leg. Every other leg lies along the ground. */
  readonly hung: readonly (readonly ProfilePoint[])[]
  readonly supports: readonly Support[]
  readonly crossings: readonly ProfileCrossing[]
}

/** What a profile needs of a line's report. */
interface ProfiledLine {
  readonly legs: readonly { readonly mapM: number }[]
  readonly crossings: readonly Crossing[]
}

/** Points drawn of one span's curve, besides its first. */
const POINTS_PER_SPAN = 8

/** The profile of a line; undefined where no height on it is known. */
export function lineProfile(
  plan: Plan,
  line: Line,
  { legs, crossings }: ProfiledLine,
  wire: Wire | undefined,
  ground: GridGround | undefined,
): LineProfile | undefined {
  if (!ground) return undefined
  const profile = profileAlong(
    ground,
    verticesOf(plan, line),
    legs.map(({ mapM }) => mapM),
  )
  if (profile.lowestM === undefined) return undefined
  const hung: ProfilePoint[][] = []
  const supports: Support[] = []
  for (const [i, { lay }] of line.legs.entries()) {
    const slope = profile.legs[i]!
    if (lay !== 'overhead' || slope.meanPct === undefined) continue
    const overhead = overheadLegOf({ plan, line, legs, wire, ground }, i)
    if (!overhead) continue
    const points: ProfilePoint[] = []
    for (const { startM, endM, startHeightM, hanging } of overhead.spans) {
      const step = (endM - startM) / POINTS_PER_SPAN
      const first = points.length === 0 ? 0 : 1
      for (let k = first; k <= POINTS_PER_SPAN; k++) {
        const heightM = startHeightM + wireHeightM(hanging, step * k)
        points.push({ atM: slope.startM + startM + step * k, heightM })
      }
    }
    const topAt = (distanceM: number) =>
      overhead.spans.find(({ startM }) => startM === distanceM)?.startHeightM ?? points.at(-1)!.heightM
    for (const atM of [...overhead.spans.map(({ startM }) => startM), overhead.spans.at(-1)!.endM])
      supports.push({ atM: slope.startM + atM, heightM: overhead.groundAt(atM), topM: topAt(atM) })
    hung.push(points)
  }
  return {
    lengthM: profile.samples.at(-1)?.distanceM ?? 0,
    ends: [stationName(plan, line.from), stationName(plan, line.to)],
    ground: profile,
    legs: profile.legs.map((leg, i) => ({ ...leg, lay: line.legs[i]!.lay, isSteep: isSteep(leg) })),
    hung,
    supports,
    crossings: crossings.map(({ distanceM, kind, name }) => ({
      atM: distanceM,
      kind,
      name: hazardName(name, kind),
    })),
  }
}

/** What the ground and the wire do at one place on a line. */
export interface ProfilePlace {
  readonly heightM: number | undefined
  readonly leg: number
  readonly lay: Lay
  /** Height of hung wire over the ground, m. */
  readonly wireOverM: number | undefined
}

/** The place on a profile at a distance on the map from the line's first station, m. */
export function profileAt({ ground, legs, hung }: LineProfile, atM: number): ProfilePlace {
  const leg = Math.max(
    0,
    legs.findIndex(({ endM }) => atM <= endM),
  )
  const heightM = heightAt(
    ground.samples.map((sample) => ({ atM: sample.distanceM, heightM: sample.heightM })),
    atM,
  )
  const curve = hung.find((points) => points[0]!.atM <= atM && points.at(-1)!.atM >= atM)
  const wireM = curve && heightAt(curve, atM)
  return {
    heightM,
    leg,
    lay: legs[leg]!.lay,
    wireOverM: wireM === undefined || heightM === undefined ? undefined : Math.max(0, wireM - heightM),
  }
}

function heightAt(
  points: readonly { readonly atM: number; readonly heightM: number | undefined }[],
  atM: number,
): number | undefined {
  const next = points.findIndex((point) => point.atM >= atM)
  const b = points[next === -1 ? points.length - 1 : next]
  const a = points[Math.max(0, next - 1)]
  if (a?.heightM === undefined || b?.heightM === undefined) return undefined
  const t = b.atM > a.atM ? (atM - a.atM) / (b.atM - a.atM) : 0
  return a.heightM + (b.heightM - a.heightM) * Math.min(1, Math.max(0, t))
}
