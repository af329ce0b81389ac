import { ticks } from 'd3-array'
import { round, type StripDrawing, type StripLine, type StripStretch, TIER_MM, widthOf } from './strip'
import { labelsOf } from './strip-labels'
import { profileOf } from './strip-profile'

const GUTTER_MM = 15
/** Rows of names above the strip: a line with few stops needs two. */
const MOST_TIERS = 3
const FEW_STOPS = 8
const PROFILE_MM = 10
const SCALE_MM = 4.5
/** Between the tags' own tier and the wire. */
const ABOVE_WIRE_MM = 3
/** Figures of a scale want so much room each. */
const TICK_MM = 13

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
  // What a match line says stands below the tags that hang from the wire.
  const scalesTop = wireY + (matches.length > 0 ? 6.8 : 6)
  return {
    widthMm,
    heightMm: scalesTop + scales.length * SCALE_MM,
    left,
    right,
    wireY,
    legs: line.legs
      .filter(({ fromM, toM }) => toM > stretch.fromM && fromM < stretch.toM)
      .map(({ lay, fromM, toM }) => ({ lay, fromX: xOf(fromM), toX: xOf(toM) })),
    done: line.done
      .filter(({ fromM, toM }) => toM > stretch.fromM && fromM < stretch.toM)
      .map(({ sign, fromM, toM }) => ({ sign, fromX: xOf(fromM), toX: xOf(toM) })),
    marks: marks.map(({ kind, groundM, isTestPoint = false }) => ({ kind, x: xOf(groundM), isTestPoint })),
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
