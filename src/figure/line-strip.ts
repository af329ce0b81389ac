import { ticks } from 'd3-array'
import type { Lay } from '../plan/plan'
import { textWidthEm } from './text-width'

/** What a mark on a strip stands for. */
export type StripMarkKind = 'station' | 'bend' | 'splice' | 'tag' | 'crossing' | 'caution'

/** Something on the line, at its running distance along the ground. */
export interface StripMark {
  readonly kind: StripMarkKind
  readonly groundM: number
  readonly name: string
}

/** A scale along the strip: 0 at the line's start, `total` at the end of its wire, in proportion to the wire between them. */
export interface StripScale {
  readonly name: string
  readonly total: number
}

/** A line as its strip is drawn from. */
export interface StripLine {
  readonly groundM: number
  readonly wireM: number
  readonly legs: readonly { readonly lay: Lay; readonly fromM: number; readonly toM: number }[]
  readonly marks: readonly StripMark[]
  /** Running distances along the ground in the person's unit. */
  readonly distance: { readonly name: string; readonly perM: number }
  readonly scales: readonly StripScale[]
  readonly wireAt: (groundM: number) => number
  readonly groundAt: (wireM: number) => number
  /** Heights by running distance, where they are known, and the wire's own where it hangs. */
  readonly ground: readonly (readonly [groundM: number, heightM: number])[]
  readonly hung: readonly (readonly (readonly [groundM: number, heightM: number])[])[]
  readonly heightText: (heightM: number) => string
}

/** The stretch of the line that one drawing shows, and how it joins its neighbours. */
export interface StripStretch {
  readonly fromM: number
  readonly toM: number
  readonly from?: string
  readonly to?: string
}

export interface StripLabel {
  readonly text: string
  readonly x: number
  readonly y: number
  readonly anchor: 'start' | 'middle' | 'end'
  readonly isBold: boolean
  /** A stroke down to the mark that it names, mm; none where it stands right over it. */
  readonly leader?: readonly [x: number, fromY: number, toY: number]
}

/** A strip as drawn, mm. */
export interface StripDrawing {
  readonly widthMm: number
  readonly heightMm: number
  readonly left: number
  readonly right: number
  readonly wireY: number
  readonly legs: readonly { readonly lay: Lay; readonly fromX: number; readonly toX: number }[]
  readonly marks: readonly { readonly kind: StripMarkKind; readonly x: number }[]
  readonly labels: readonly StripLabel[]
  readonly matches: readonly { readonly x: number; readonly text: string; readonly isStart: boolean }[]
  readonly profile: {
    readonly body: string
    readonly ground: string
    readonly hung: string
    readonly heights: readonly { readonly y: number; readonly text: string }[]
  } | null
  readonly scales: readonly {
    readonly name: string
    readonly y: number
    readonly ticks: readonly { readonly x: number; readonly text: string }[]
  }[]
}

const GUTTER_MM = 15
const LETTER_MM = 2.8
const TIER_MM = 3.5
/** Rows of names above the strip: a line with few stops needs two. */
const MOST_TIERS = 3
const FEW_STOPS = 8
const PROFILE_MM = 10
const SCALE_MM = 4.9
/** Between the tags' own tier and the wire. */
const ABOVE_WIRE_MM = 3
/** Figures of a scale want so much room each. */
const TICK_MM = 13
/** Heights are never stretched more against lengths. */
const MOST_STRETCH = 25

const widthOf = (text: string, isBold: boolean) => textWidthEm(text, isBold) * LETTER_MM
const round = (mm: number) => Math.round(mm * 100) / 100

/** A text no wider than `mostMm`, with dots where it was cut. */
function cut(text: string, mostMm: number, isBold: boolean): string {
  if (widthOf(text, isBold) <= mostMm) return text
  const letters = [...text]
  while (letters.length > 1 && widthOf(`${letters.join('')}…`, isBold) > mostMm) letters.pop()
  return `${letters.join('')}…`
}

/**
 * One stretch of a line drawn straight, its scales below it: what a meter reads is looked for on its scale, and what lies straight above is the
 * place.
 */
export function drawStrip(line: StripLine, stretch: StripStretch, widthMm: number): StripDrawing {
  const left = GUTTER_MM
  const right = widthMm - 4
  const lengthM = Math.max(stretch.toM - stretch.fromM, 1e-6)
  const perM = (right - left) / lengthM
  const xOf = (groundM: number) =>
    round(left + (Math.min(stretch.toM, Math.max(stretch.fromM, groundM)) - stretch.fromM) * perM)
  const isOn = (groundM: number) => groundM >= stretch.fromM - 1e-6 && groundM <= stretch.toM + 1e-6

  const marks = line.marks.filter(({ groundM }) => isOn(groundM))
  const tiers = new Set(marks.map(({ groundM }) => groundM)).size > FEW_STOPS ? MOST_TIERS : MOST_TIERS - 1
  const labelsMm = tiers * TIER_MM + 1
  const profile = profileOf(line, stretch, {
    left,
    right,
    top: labelsMm,
    bottom: labelsMm + PROFILE_MM,
    xOf,
    perM,
  })
  const tagY = labelsMm + (profile ? PROFILE_MM : 0) + TIER_MM
  const wireY = tagY + ABOVE_WIRE_MM
  const matches = [
    ...(stretch.from ? [{ x: left, text: stretch.from, isStart: true }] : []),
    ...(stretch.to ? [{ x: right, text: stretch.to, isStart: false }] : []),
  ]
  const [fromWireM, toWireM] = [line.wireAt(stretch.fromM), line.wireAt(stretch.toM)]
  const count = (right - left) / TICK_MM
  const distances = ticks(stretch.fromM * line.distance.perM, stretch.toM * line.distance.perM, count)
  const scales = [
    {
      name: line.distance.name,
      ticks: distances.map((value) => ({
        x: xOf(value / line.distance.perM),
        text: String(Number(value.toFixed(6))),
      })),
    },
    ...line.scales.map(({ name, total }) => {
      const [from, to] = [fromWireM, stretch.to ? toWireM : line.wireM].map(
        (wireM) => (wireM / line.wireM) * total,
      )
      return {
        name,
        ticks: ticks(from!, to!, count).map((value) => ({
          x: xOf(line.groundAt((value / total) * line.wireM)),
          text: String(Number(value.toFixed(6))),
        })),
      }
    }),
  ]
  const scalesTop = wireY + 6
  return {
    widthMm,
    heightMm: scalesTop + scales.length * SCALE_MM,
    left,
    right,
    wireY,
    legs: line.legs
      .filter(({ fromM, toM }) => toM > stretch.fromM && fromM < stretch.toM)
      .map(({ lay, fromM, toM }) => ({ lay, fromX: xOf(fromM), toX: xOf(toM) })),
    marks: marks.map(({ kind, groundM }) => ({ kind, x: xOf(groundM) })),
    labels: labelsOf(marks, xOf, { left: 0, right: widthMm }, { tagY, wireY, tiers }),
    matches,
    profile,
    scales: scales.map(({ name, ticks: each }, i) => ({
      name,
      y: round(scalesTop + i * SCALE_MM),
      // Figures that would run into one another, as where much wire lies on little ground, are thinned.
      // A match line runs down through the scales: no figure stands on it.
      ticks: thinned(each.filter(({ x }) => matches.every((match) => Math.abs(x - match.x) > 4))),
    })),
  }
}

function thinned(all: readonly { readonly x: number; readonly text: string }[]) {
  let clearX = Number.NEGATIVE_INFINITY
  return all.filter(({ x, text }) => {
    const half = widthOf(text, false) / 2
    if (x - half < clearX) return false
    clearX = x + half + 1
    return true
  })
}

/** The order in which marks are named as long as there is room. */
const RANK: Readonly<Record<StripMarkKind, number>> = {
  station: 0,
  caution: 1,
  crossing: 1,
  splice: 2,
  tag: 3,
  bend: 4,
}

interface Taken {
  readonly from: number
  readonly to: number
  readonly tier: number
}

/** Names over the strip: tags close to it, all else in the tiers above, each only where it covers no other and its stroke crosses none. */
function labelsOf(
  marks: readonly StripMark[],
  xOf: (groundM: number) => number,
  bounds: { readonly left: number; readonly right: number },
  { tagY, wireY, tiers }: { readonly tagY: number; readonly wireY: number; readonly tiers: number },
): readonly StripLabel[] {
  const taken: Taken[] = []
  const leaders: { readonly x: number; readonly tier: number }[] = []
  const labels: StripLabel[] = []
  const isFree = (from: number, to: number, tier: number) =>
    from >= bounds.left &&
    to <= bounds.right &&
    taken.every((other) => other.tier !== tier || other.to < from || other.from > to) &&
    leaders.every(({ x, tier: high }) => high <= tier || x < from || x > to)
  const isClearBelow = (x: number, tier: number, own: number | undefined) =>
    taken.every(
      (other) => other.tier >= tier || other.tier === own || x < other.from - 0.4 || x > other.to + 0.4,
    )

  for (const { kind, groundM, name } of marks.toSorted((a, b) => RANK[a.kind] - RANK[b.kind])) {
    if (!name) continue
    const x = xOf(groundM)
    const isBold = kind === 'station' || kind === 'tag'
    const text = cut(name, kind === 'station' ? 60 : 46, isBold)
    const width = widthOf(text, isBold)
    if (kind === 'tag') {
      const from = Math.min(Math.max(x - width / 2, bounds.left), bounds.right - width)
      if (!isFree(from - 0.5, from + width + 0.5, 0)) continue
      taken.push({ from, to: from + width, tier: 0 })
      labels.push({ text, x: round(from + width / 2), y: tagY - 0.6, anchor: 'middle', isBold })
      continue
    }
    for (let tier = 1; tier <= tiers; tier++) {
      const shifts = [0, width / 2 - 1, 1 - width / 2]
      const from = shifts
        .map((shift) => x - width / 2 + shift)
        .find((start) => isFree(start - 0.7, start + width + 0.7, tier))
      if (from === undefined || !isClearBelow(x, tier, undefined)) continue
      taken.push({ from, to: from + width, tier })
      leaders.push({ x, tier })
      const y = TIER_MM - 0.6 + (tiers - tier) * TIER_MM
      labels.push({
        text,
        x: round(from + width / 2),
        y,
        anchor: 'middle',
        isBold,
        leader: [x, round(y + 0.7), round(wireY - 1.6)],
      })
      break
    }
  }
  return labels
}

interface ProfileRoom {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  readonly perM: number
  readonly xOf: (groundM: number) => number
}

function profileOf(
  { ground, hung, heightText }: StripLine,
  { fromM, toM }: StripStretch,
  { top, bottom, perM, xOf }: ProfileRoom,
): StripDrawing['profile'] {
  const within = (points: StripLine['ground']) => points.filter(([atM]) => atM >= fromM && atM <= toM)
  const seen = within(ground)
  if (seen.length < 2) return null
  const wires = hung.map(within).filter(({ length }) => length > 1)
  const heights = [...seen, ...wires.flat()].map(([, heightM]) => heightM)
  const low = heights.reduce((a, b) => Math.min(a, b))
  const high = heights.reduce((a, b) => Math.max(a, b))
  const upPerM = Math.min((bottom - top - 2) / Math.max(high - low, 1), perM * MOST_STRETCH)
  const yOf = (heightM: number) => round(bottom - 1 - (heightM - low) * upPerM)
  const path = (points: StripLine['ground']) =>
    points.map(([atM, heightM], i) => `${i ? 'L' : 'M'}${xOf(atM)} ${yOf(heightM)}`).join('')
  const outline = path(seen)
  const highY = yOf(high)
  const lowY = yOf(low)
  return {
    ground: outline,
    body: `${outline}L${xOf(seen.at(-1)![0])} ${bottom}L${xOf(seen[0]![0])} ${bottom}Z`,
    hung: wires.map(path).join(''),
    heights: [
      { y: lowY, text: heightText(low) },
      ...(lowY - highY > 3 ? [{ y: highY, text: heightText(high) }] : []),
    ],
  }
}
