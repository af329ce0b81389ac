import { constantsOf } from '../budget/line-constants'
import { shortestWay } from '../budget/path'
import { STEP_NEPERS } from '../field/gauge'
import { conditionsAt } from '../field/readings'
import { scaledWire, sigmaOf } from '../field/wire-figures'
import type { Bridge } from './evidence'
import { atPlan, type Bench, LEAST_SIGMA, type Manner, type Observation } from './observation'
import type { Trouble } from './trouble'

/** A bridge reads to this where nobody says better, %. */
const USUAL_BRIDGE_PCT = 1

/** The ways of a bridge's loop, and how much of it lies before a place. */
function bridgeWay(
  { plan, model, figures, nepers: tried }: Pick<Bench, 'plan' | 'model' | 'figures' | 'nepers'>,
  bridge: Bridge,
  manner: Manner,
) {
  const way = shortestWay(model, model.stations.indexOf(bridge.at), model.stations.indexOf(bridge.toward))
  if (!way || way.length === 0) return null
  const conditions = conditionsAt(atPlan(plan, manner), bridge)
  const byFigure = [-1, ...figures.keys()].map((figure) => {
    const nepers = Float64Array.from(figures, (_, k) => tried[k]! + (k === figure ? STEP_NEPERS : 0))
    return way.map((line) => {
      const wire = scaledWire(line.wire, figures, nepers)
      return (constantsOf({ ...line, wire }, conditions).ohmPerKm * line.wireM) / 1000
    })
  })
  const forward: boolean[] = []
  let node = model.stations.indexOf(bridge.at)
  const nodes = [node]
  for (const line of way) {
    forward.push(line.from === node)
    node = line.from === node ? line.to : line.from
    nodes.push(node)
  }
  /** How far a fault at a place lies, as a line of the way and a part of it; on a branch it seems to lie where that leaves the way. */
  const placeOf = (id: string, wireM: number): { index: number; part: number } | null => {
    const index = way.findIndex((line) => line.id === id)
    if (index !== -1) {
      const part = wireM / way[index]!.wireM
      return { index, part: forward[index] ? part : 1 - part }
    }
    const branch = model.lines.find((line) => line.id === id)
    if (!branch || !manner.branches) return null
    let met = branch.from
    for (const line of shortestWay(model, branch.from, nodes[0]!) ?? []) {
      if (nodes.includes(met)) break
      met = line.from === met ? line.to : line.from
    }
    return { index: Math.max(0, nodes.indexOf(met)), part: 0 }
  }
  const shares = (
    id: string,
    wireM: number,
  ): readonly { readonly before: number; readonly loop: number }[] => {
    const place = placeOf(id, wireM)
    return byFigure.map((ohms) => {
      const loop = ohms.reduce((sum, each) => sum + each, 0)
      if (!place) return { before: loop / 2, loop }
      const past = ohms.slice(0, place.index).reduce((sum, each) => sum + each, 0)
      return { before: (past + (ohms[place.index] ?? 0) * place.part) / 2, loop }
    })
  }
  return { shares, byEarth: way.some(({ electrodeOhms }) => electrodeOhms !== null) }
}

/** Whether the bridge's loop goes through the earth, so that there is no good wire to come back on. */
export const goesByEarth = (plan: Bench['plan'], model: Bench['model'], bridge: Bridge): boolean =>
  bridgeWay({ plan, model, figures: [], nepers: [] }, bridge, {
    branches: true,
    otherSets: false,
    otherWeather: false,
  })?.byEarth ?? false

/**
 * A bridge: Murray's balances at x / L = a / (a + b), Varley's, of equal arms, at R = L − 2x, with x the ohms of the faulty wire up to the
 * fault and L the loop. It balances where a fault leads its current off: to earth, or to the other wire.
 *
 * Source: Hawkins Electrical Guide, vol. 3 (1914), loop tests.
 */
export function bridgeObservations(bench: Bench, bridge: Bridge, manner: Manner): readonly Observation[] {
  const way = bridgeWay(bench, bridge, manner)
  if (!way) return []
  const pct = sigmaOf(bridge.meterPct ?? USUAL_BRIDGE_PCT)
  const observed = (
    read: number,
    sigma: number,
    untaken: boolean,
    of: (share: { readonly before: number; readonly loop: number }, loop: number) => number,
    bears: Observation['bears'],
  ): Observation => {
    const valuesAt = (line: string, wireM: number) => {
      const shares = way.shares(line, wireM)
      return Float64Array.from(shares, (share) => of(share, shares[0]!.loop))
    }
    const sound = () => valuesAt('', 0)
    return {
      read,
      sigma: Math.hypot(sigma, LEAST_SIGMA),
      untaken,
      bears,
      sound,
      at: (line, wireM) => {
        const values = valuesAt(line, wireM)
        return { first: () => values[0]!, all: () => values }
      },
    }
  }
  const leadsOff = ({ element, toEarth }: Trouble) => toEarth || element === 'across'
  if ('murray' in bridge) {
    const [faulty, good] = bridge.murray
    const read = faulty / Math.max(faulty + good, 1e-9)
    // In parts of the loop: a division more or less is the same at every place; near the meter the error is no less than that of a slide.
    return [observed(read, Math.max(read * pct, 5e-4), false, ({ before, loop }) => before / loop, leadsOff)]
  }
  const { loop } = way.shares('', 0)[0]!
  const rheostat = bridge.varley / loop
  const varley = observed(
    rheostat,
    Math.max(rheostat * pct, 1e-3),
    bridge.tempC === undefined,
    (share, nominal) => (share.loop - 2 * share.before) / nominal,
    leadsOff,
  )
  if (bridge.loopOhms === undefined) return [varley]
  const whole = observed(
    Math.log(Math.max(bridge.loopOhms, 1e-3)),
    pct,
    bridge.tempC === undefined,
    (share) => Math.log(share.loop),
    () => true,
  )
  return [varley, whole]
}
