import { seeded, seededNormal } from '../budget/seeded'
import { solveLower } from '../field/linear-fit'
import type { Setup } from './glimpse'
import { dot, shares, solveUpper } from './log-sums'
import type { Bench, Manner } from './observation'
import type { Reckoned, Reckoner, WorkCell } from './reckoner'
import type { Hypothesis } from './trouble'

/** One fault that would explain what is known, drawn as likely as it is. */
export interface Particle {
  readonly line: string
  readonly wireM: number
  readonly hypothesis: Hypothesis
  readonly ohms: number
  readonly manner: Manner
  /** By how much each figure of the wire is then more than in the catalog, nepers. */
  readonly nepers: Float64Array
}

const PARTICLES = 120

/** A stretch of a fault's ohms is parted so often for a draw. */
const PARTS = 64

/** How far on in a stretch of its ohms a fault is drawn, where what is left of the readings goes from `start` to `start + change`. */
function partDrawn(start: Float64Array, change: Float64Array, random: () => number): number {
  const [a, b] = [dot(change, change), dot(change, start)]
  const at = (k: number) => (k + 0.5) / PARTS
  const weights = shares(Array.from({ length: PARTS }, (_, k) => -(a * at(k) ** 2 + 2 * b * at(k)) / 2))
  return at(picked(weights, random()))
}

/** Which of some chances a number from 0 to 1 falls on. */
function picked(chances: readonly number[], number: number): number {
  let [k, left] = [0, number]
  while (k < chances.length - 1 && left > chances[k]!) left -= chances[k++]!
  return k
}

/** Draws faults as likely as they are. @param masses by stretch, setup and hypothesis */
export function drawn(
  { figures, hypotheses }: Bench,
  setups: readonly Setup[],
  { lnByOhms, doubts }: Reckoner,
  cells: readonly WorkCell[],
  masses: readonly (readonly Float64Array[])[],
): readonly Particle[] {
  const random = seeded(1)
  const normal = seededNormal(2)
  const total = masses.reduce(
    (all, each) => all + each.reduce((sum, own) => sum + own.reduce((part, mass) => part + mass, 0), 0),
    0,
  )

  const drawFrom = (cell: WorkCell, s: number, h: number): Particle => {
    const { observations, way } = setups[s]!
    const hypothesis = hypotheses[h]!
    const { borne } = cell.middle.seen(s, h)
    const n = borne.length
    const kept: Reckoned[] = []
    const ln = lnByOhms(cell, s, h, (_, { lower, rows, start, change }) => {
      kept.push({ lower: lower.slice(), rows: rows.slice(), start: start.slice(), change: change.slice() })
    })
    const u = picked(shares([...ln]), random())
    const { lnOhms } = hypothesis
    const next = Math.min(u + 1, lnOhms.length - 1)
    // What is drawn of the doubts before any reading is set right by the readings: G. Matheron (from memory).
    const { lower, rows, start, change } = kept[u]!
    const part = partDrawn(solveLower(lower, n, start.slice()), solveLower(lower, n, change.slice()), random)
    const before = Float64Array.from({ length: doubts.count }, normal)
    const rest = start.map((each, a) => {
      let sum = each + change[a]! * part - observations[borne[a]!]!.sigma * normal()
      for (let f = 0; f < doubts.count; f++) sum -= rows[a * doubts.count + f]! * before[f]!
      return sum
    })
    const solved = solveUpper(lower, n, solveLower(lower, n, rest))
    const nepers = Float64Array.from(figures, ({ sigma }, f) => {
      let sum = before[f]!
      for (let a = 0; a < n; a++) sum += rows[a * doubts.count + f]! * solved[a]!
      return sigma * sum
    })
    return {
      line: cell.line,
      wireM: cell.from.wireM + random() * (cell.to.wireM - cell.from.wireM),
      hypothesis,
      ohms: Math.exp(lnOhms[u]! + (lnOhms[next]! - lnOhms[u]!) * part),
      manner: way,
      nepers,
    }
  }

  const particles: Particle[] = []
  // Evenly spaced draws leave less to chance than single ones.
  let [next, run] = [(random() * total) / PARTICLES, 0]
  for (const [k, cell] of cells.entries()) {
    for (const [s, own] of masses[k]!.entries()) {
      for (const [h, mass] of own.entries())
        for (run += mass; next < run; next += total / PARTICLES) particles.push(drawFrom(cell, s, h))
    }
  }
  return particles
}
