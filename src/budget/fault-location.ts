import type { CircuitModel, ModelLine } from './circuit-model'
import type { Conditions } from './conditions'
import { constantsOf } from './line-constants'
import { shortestWay } from './path'

/**
 * Ohms of the loop up to a short, from readings taken at both ends: (R₁ − R₂ + R) / 2, which leaves the ohms of the short itself out.
 *
 * Derived: R₁ = x + f, R₂ = R − x + f.
 *
 * @param wholeOhm R, the loop of the sound line, Ω
 */
export const shortFromBothEndsOhm = (nearOhm: number, farOhm: number, wholeOhm: number): number =>
  (nearOhm - farOhm + wholeOhm) / 2

/**
 * Murray loop: ohms of the faulty wire up to the fault, Ω, with a good wire joined to it at the far end.
 *
 * x = L · a / (a + b). Source: Hawkins Electrical Guide, vol. 3 (1914), loop tests.
 *
 * @param loopOhm L, both wires to the far end and back, Ω
 * @param nearArm a, bridge arm next to the faulty wire
 * @param farArm b, bridge arm next to the good wire
 */
export const murrayOhm = (loopOhm: number, nearArm: number, farArm: number): number =>
  (loopOhm * nearArm) / (nearArm + farArm)

/**
 * Varley loop: ohms of the faulty wire up to the fault, Ω: x = (b L − a R) / (a + b); with equal arms (L − R) / 2.
 *
 * Derived from the balance a / b = (L − x) / (R + x), with the rheostat R in series with the faulty wire.
 * Source of the arrangement: Hawkins Electrical Guide, vol. 3 (1914).
 *
 * @param goodArm a, bridge arm next to the good wire
 * @param faultyArm b, bridge arm next to the rheostat and the faulty wire
 */
export const varleyOhm = (loopOhm: number, rheostatOhm: number, goodArm = 1, faultyArm = 1): number =>
  (faultyArm * loopOhm - goodArm * rheostatOhm) / (goodArm + faultyArm)

/** Part of the line up to an open, from capacitances read at both ends: C₁ / (C₁ + C₂). Common practice. */
export const openPart = (nearFarad: number, farFarad: number): number => nearFarad / (nearFarad + farFarad)

/** A place on one line of a circuit. */
export interface FaultPlace {
  readonly line: string
  /** Wire from the line's `from` end, m. */
  readonly wireM: number
  /** Wire from where the reading was taken, m. */
  readonly totalM: number
}

export type Located =
  | { readonly kind: 'place'; readonly place: FaultPlace }
  /** The reading is more than the whole way: the fault is farther off, or it has ohms of its own. */
  | { readonly kind: 'beyond'; readonly wholeWay: number }
  | { readonly kind: 'no-way' }

/**
 * Where along the way between two stations a reading falls, counted from the first.
 *
 * @param perKm what one kilometre of a line adds to the reading
 * @param atEnds what the ends of a line add, at the end walked into and at the end walked out of
 */
function locate(
  model: CircuitModel,
  from: string,
  to: string,
  reading: number,
  perKm: (line: ModelLine) => number,
  atEnds: (line: ModelLine, forward: boolean) => readonly [number, number],
): Located {
  const start = model.stations.indexOf(from)
  const way = shortestWay(model, start, model.stations.indexOf(to))
  if (!way) return { kind: 'no-way' }
  let left = reading
  let totalM = 0
  let node = start
  for (const line of way) {
    const forward = line.from === node
    const [into, out] = atEnds(line, forward)
    const whole = (perKm(line) * line.wireM) / 1000
    const along = Math.max(0, left - into)
    if (along <= whole + out) {
      const wireM = whole > 0 ? Math.min(1, along / whole) * line.wireM : 0
      return {
        kind: 'place',
        place: { line: line.id, wireM: forward ? wireM : line.wireM - wireM, totalM: totalM + wireM },
      }
    }
    left -= into + whole + out
    totalM += line.wireM
    node = forward ? line.to : line.from
  }
  return { kind: 'beyond', wholeWay: reading - left }
}

/** Where a short lies, from the loop ohms read at one station towards another. @param loopOhm reading less the ohms of the short */
export const locateByLoopOhm = (
  model: CircuitModel,
  conditions: Conditions,
  from: string,
  to: string,
  loopOhm: number,
): Located =>
  locate(
    model,
    from,
    to,
    loopOhm,
    (line) => constantsOf(line, conditions).ohmPerKm,
    ({ electrodeOhms }, forward) => {
      const [near, far] = electrodeOhms ?? [0, 0]
      return forward ? [near, far] : [far, near]
    },
  )

/** Where an open lies, from the capacitance read at one station into a line without bells, F. */
export const locateByFarad = (
  model: CircuitModel,
  conditions: Conditions,
  from: string,
  to: string,
  farad: number,
): Located =>
  locate(
    model,
    from,
    to,
    farad,
    (line) => constantsOf(line, conditions).faradPerKm,
    () => [0, 0],
  )
