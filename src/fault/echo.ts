import type { Conditions } from '../budget/conditions'
import { constantsOf } from '../budget/line-constants'
import { STEP_NEPERS } from '../field/gauge'
import { conditionsAt, meterSigma } from '../field/readings'
import { scaledWire } from '../field/wire-figures'
import type { Echo } from './evidence'
import { phi } from './log-sums'
import {
  atPlan,
  type Bench,
  LEAST_SIGMA,
  type Manner,
  type Observation,
  standOf,
  type Witness,
} from './observation'
import { type Run, routeTo, routeToFar } from './route'
import type { Trouble } from './trouble'

/** Light in empty space, m/s. By definition of the metre. */
const LIGHT_M_PER_S = 299_792_458

/**
 * A pulse is so short that no current flows inside the wires: of the loop's inductance their own part is gone, 0.1 mH/km.
 *
 * Source: L = (µ₀/π) [ln(D/a) + µᵣ/4] of two parallel wires (Terman, Radio Engineers' Handbook (1943), sect. 2; from memory).
 */
const INNER_MILLIH_PER_KM = 0.1

/** What a catalog's inductance leaves in doubt of a pulse's speed, nepers: it is given to a tenth or so. Allowance. */
const SPEED_SIGMA = 0.03
/** Where nobody says how well an instrument times an echo, %. Allowance. */
const USUAL_PCT = 2

/** Speed of a pulse over one km of a line, s, 1/v = √(L C); and its resistance to it, Ω, √(L/C). */
function pulseOn(line: Run['line'], conditions: Conditions): { secondsPerKm: number; ohms: number } {
  const { henryPerKm, faradPerKm } = constantsOf(line, conditions)
  const inner = (INNER_MILLIH_PER_KM * henryPerKm) / Math.max(line.wire.loopMilliHPerKm, 1e-9)
  const henry = Math.max(henryPerKm / 2, henryPerKm - inner)
  // Nothing is faster than light, whatever a catalog says.
  const secondsPerKm = Math.max(Math.sqrt(henry * faradPerKm), 1000 / LIGHT_M_PER_S)
  return { secondsPerKm, ohms: Math.sqrt(henry / Math.max(faradPerKm, 1e-15)) }
}

/** The time that an instrument measured, there and back, s. */
const secondsOf = ({ echo }: Echo): number =>
  echo.ns !== undefined
    ? echo.ns * 1e-9
    : (2 * (echo.m ?? 0)) / (LIGHT_M_PER_S * ((echo.velocityPct ?? 100) / 100))

/** A time-domain reading as something that faults are held against: t = 2 ∫ √(L C) dx. Source: W. L. Everitt (1937), ch. 4 (from memory). */
export function echoObservation(bench: Bench, echo: Echo, manner: Manner): Observation | null {
  const { plan, model, figures, nepers: tried } = bench
  const stand = standOf(model, echo)
  if (!stand) return null
  const conditions = conditionsAt(atPlan(plan, manner), echo)
  const byFigure = [-1, ...figures.keys()].map((figure) =>
    Float64Array.from(figures, (_, k) => tried[k]! + (k === figure ? STEP_NEPERS : 0)),
  )
  const times = (runs: readonly Run[]) =>
    Float64Array.from(byFigure, (nepers) => {
      const seconds = runs.reduce((sum, { line, wireM }) => {
        const wire = scaledWire(line.wire, figures, nepers)
        return sum + (2 * pulseOn({ ...line, wire }, conditions).secondsPerKm * wireM) / 1000
      }, 0)
      return Math.log(seconds + 1e-9)
    })
  const seconds = secondsOf(echo)
  const far = times(routeToFar(stand))
  const isUp = ({ element }: Trouble) => element === 'broken' || element === 'along'
  return {
    read: Math.log(seconds + 1e-9),
    sigma: Math.hypot(meterSigma('loopOhms', 1, echo.meterPct ?? USUAL_PCT), SPEED_SIGMA, LEAST_SIGMA),
    untaken: false,
    bears: (trouble) =>
      trouble.element !== 'none' && (!echo.echo.swing || isUp(trouble) === (echo.echo.swing === 'up')),
    sound: () => far,
    at: (line, wireM, side) => {
      const route = routeTo(stand, line, wireM, side)
      // What the instrument does not look into sends nothing back: the echo is then that of the far end.
      const values = route ? times(route) : far
      return { first: () => values[0]!, all: () => values }
    },
  }
}

/** An echo of less than this part of the pulse is hardly seen, and how sharply so, nepers. Allowances. */
const LEAST_SEEN = 0.04
const SEEN_SIGMA = 0.5

/** That there is an echo at all: of R across a line Z₀ / (2 R + Z₀) comes back, of R along it R / (R + 2 Z₀). */
export function echoWitness(bench: Bench, echo: Echo, manner: Manner): Witness | null {
  const stand = standOf(bench.model, echo)
  const first = stand && routeToFar(stand)[0]
  if (!first) return null
  const { ohms: z0 } = pulseOn(first.line, conditionsAt(atPlan(bench.plan, manner), echo))
  return {
    sound: () => 0,
    at:
      () =>
      ({ element }, ohms) => {
        const part =
          element === 'across' ? z0 / (2 * ohms + z0) : element === 'along' ? ohms / (ohms + 2 * z0) : 1
        return Math.log(0.01 + 0.98 * phi(Math.log(part / LEAST_SEEN) / SEEN_SIGMA))
      },
  }
}
