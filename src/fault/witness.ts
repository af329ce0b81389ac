import type { ModelSet } from '../budget/circuit-model'
import { ringingSides } from '../budget/ringing'
import type { Spread } from '../catalog/sources'
import { gaugeOf } from '../field/gauge'
import { type Probe, ringProbe, speechProbe, standNowhere } from '../field/probe'
import { conditionsAt } from '../field/readings'
import { sigmaOf } from '../field/wire-figures'
import type { Crank } from './evidence'
import { phi } from './log-sums'
import { type Bench, elementOf, type Witness } from './observation'

/** People mishear, hang up, and ring the wrong code: no answer is surer than this. Allowance. */
const SURE = 0.98

const answerLn = (chance: number): number => Math.log(1 - SURE + (2 * SURE - 1) * chance)

const spread = (entry: { readonly spread?: Spread } | undefined, ...members: readonly string[]): number =>
  Math.hypot(0.1, ...members.map((member) => sigmaOf(entry?.spread?.[member] ?? 0)))

function witnessOf({ plan, figures }: Bench, probe: Probe, chanceOf: (shown: number) => number): Witness {
  const gauge = gaugeOf(probe, conditionsAt(plan, {}), figures.slice(0, 0))
  return {
    sound: () => answerLn(chanceOf(gauge.sound()[0]!)),
    at: (line, wireM, side) => {
      const placed = gauge.at(line, wireM, side)
      return (trouble, ohms) => answerLn(chanceOf(placed.first(elementOf(trouble), ohms)))
    },
  }
}

/** Who rings whom: whether the volts at the bell are enough. Null where nothing there rings. */
export function ringWitness(
  bench: Bench,
  [from, to]: readonly [string, string],
  ok: boolean,
): Witness | null {
  for (const { circuit } of ringingSides(bench.model)) {
    const [source, node] = [circuit.stations.indexOf(from), circuit.stations.indexOf(to)]
    const bell = circuit.sets.find((each) => each.node === node)?.set
    if (source === -1 || node === -1 || !bell?.ringer) continue
    const probe = ringProbe(standNowhere(circuit, node, source), source)
    if (!probe) continue
    const crank = circuit.sets.find((each) => each.node === source)?.set
    const sigma = Math.hypot(spread(bell, 'ringer.minVolts', 'ringer.ohms'), spread(crank, 'generator.volts'))
    const least = bell.ringer.minVolts
    return witnessOf(bench, probe, (volts) => {
      const rings = phi(Math.log(Math.max(volts, 1e-6) / least) / sigma)
      return ok ? rings : 1 - rings
    })
  }
  return null
}

/** Who hears whom: whether speech loses no more than the sets can bear. */
export function hearWitness(bench: Bench, [a, b]: readonly [string, string], ok: boolean): Witness | null {
  const { model } = bench
  const setAt = (station: string): ModelSet | undefined =>
    model.sets.find(({ node }) => model.stations[node] === station)
  const [from, to] = [setAt(a), setAt(b)]
  if (!from || !to) return null
  const stand = standNowhere(model, to.node, from.node)
  const most = Math.min(from.set.maxLossDb, to.set.maxLossDb)
  const sigmaDb = most * sigmaOf(to.set.spread?.maxLossDb ?? 0) + 3
  return witnessOf(bench, speechProbe(stand, from, to), (lossDb) => {
    const hears = phi((most - Math.min(lossDb, 300)) / sigmaDb)
    return ok ? hears : 1 - hears
  })
}

/** How the crank turns: heavy into a short, light into nothing, against what it turns into when all is well. */
export function crankWitness(bench: Bench, { crank, at }: Crank): Witness | null {
  const { model } = bench
  const own = model.sets.find(({ node, set }) => model.stations[node] === at && set.generator)
  if (!own) return null
  const { hz } = own.set.generator!
  const stand = standNowhere(model, own.node, own.node)
  const ring = ringProbe(stand, own.node)!
  const probe: Probe = { ...ring, ports: [own.node], shows: (re, im) => Math.hypot(re[0]!, im[0]!), hz }
  const usual = gaugeOf(probe, conditionsAt(bench.plan, {}), []).sound()[0]!
  // A hand tells a load of half or of twice the usual from it, more or less. Allowance.
  return witnessOf(bench, probe, (ohms) => {
    const nepers = Math.log(ohms / usual)
    const heavy = phi((-Math.log(2) - nepers) / 0.4)
    const light = phi((nepers - Math.log(2)) / 0.4)
    return crank === 'heavy' ? heavy : crank === 'light' ? light : Math.max(0, 1 - heavy - light)
  })
}

/** A stretch that was found sound: a fault there is as good as out of the question. */
export function soundWitness({
  line: own,
  fromM,
  toM,
}: {
  line: string
  fromM: number
  toM: number
}): Witness {
  return {
    sound: () => 0,
    at: (line, wireM, side) => () =>
      line === own && side >= fromM && side <= toM && wireM >= fromM && wireM <= toM ? Math.log(1e-4) : 0,
  }
}
