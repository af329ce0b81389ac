import type { Line, Plan, Position } from '../plan/plan'
import { crossingsOf } from '../terrain/crossings'
import { pointAtGroundM, wireMAtGroundM } from './along'
import type { MeasuredLine } from './measured'

/** A tag on a line: where it hangs, and why. */
export interface LineTag {
  /** Counted from the line's `from`, from 1. */
  readonly number: number
  readonly groundM: number
  readonly wireM: number
  readonly legIndex: number
  readonly position: Position
  /** Words for the tag list, the first one being the most telling. */
  readonly reasons: readonly string[]
  /** True where the pair can be opened and measured: the line's ends, and between them at most `TEST_EVERY_M` apart. */
  readonly isTestPoint: boolean
}

/** Longest stretch of ground without a test point, m. Common practice: a test point every few kilometres. */
export const TEST_EVERY_M = 2000

/** Tags closer than this are one tag, m of ground: a hand reaches both. */
const SAME_PLACE_M = 15

const CROSSING_WORDS = {
  road: 'road',
  track: 'track',
  railway: 'railway',
  water: 'water',
  'power-line': 'power line',
  'keep-out': 'keep-out area',
} as const

interface Reason {
  readonly groundM: number
  readonly text: string
  readonly isTestPoint: boolean
}

/** Where the handbook wants a tag, one reason each, along the whole line. */
function reasonsFor(plan: Plan, measured: MeasuredLine, line: Line): readonly Reason[] {
  const nameOf = (id: Line['from']) => plan.stations.get(id)?.name || id
  const lastM = measured.groundM
  const ends: Reason[] = [
    { groundM: 0, text: nameOf(line.from), isTestPoint: true },
    { groundM: lastM, text: nameOf(line.to), isTestPoint: true },
  ]
  let runM = 0
  const changes = measured.legs.slice(0, -1).flatMap((leg, i): Reason[] => {
    runM += leg.groundM
    const next = measured.legs[i + 1]!.lay
    return next === leg.lay ? [] : [{ groundM: runM, text: `${leg.lay} to ${next}`, isTestPoint: false }]
  })
  const perMapM = measured.mapM > 0 ? measured.groundM / measured.mapM : 1
  const crossings = crossingsOf(plan, line).map(({ kind, name, distanceM }): Reason => {
    const words = CROSSING_WORDS[kind]
    return { groundM: distanceM * perMapM, text: name ? `${words}: ${name}` : words, isTestPoint: false }
  })
  const stretches = Math.ceil(lastM / TEST_EVERY_M - 1e-9)
  const tests = Array.from(
    { length: Math.max(0, stretches - 1) },
    (_, i): Reason => ({ groundM: (lastM * (i + 1)) / stretches, text: 'test point', isTestPoint: true }),
  )
  return [...ends, ...changes, ...crossings, ...tests]
}

/**
 * The tags of a line from `from` to `to`: at its ends, where the lay changes, at each crossing, and at test points at most 2 km apart.
 *
 * Source: US Army subcourse SS0444, p. 2-9, par. 37 (where to tag); the spacing of test points is common practice.
 */
export function lineTags(plan: Plan, measured: MeasuredLine, line: Line): readonly LineTag[] {
  const reasons = reasonsFor(plan, measured, line).toSorted((a, b) => a.groundM - b.groundM)
  const groups: Reason[][] = []
  for (const reason of reasons) {
    const last = groups.at(-1)
    if (last && reason.groundM - last[0]!.groundM < SAME_PLACE_M) last.push(reason)
    else groups.push([reason])
  }
  return groups.map((group, i) => {
    // The tag hangs at the test point where there is one: an end stays at its end.
    const place = group.find(({ isTestPoint }) => isTestPoint) ?? group[0]!
    const { position, legIndex } = pointAtGroundM(plan, measured, line, place.groundM)
    return {
      number: i + 1,
      groundM: place.groundM,
      wireM: wireMAtGroundM(measured, place.groundM),
      legIndex,
      position,
      reasons: [
        ...new Set(
          group.toSorted((a, b) => Number(b.isTestPoint) - Number(a.isTestPoint)).map(({ text }) => text),
        ),
      ],
      isTestPoint: place.isTestPoint,
    }
  })
}
