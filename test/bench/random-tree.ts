import type { CircuitModel } from '../../src/budget/circuit-model'
import type { Supply } from '../../src/catalog/supply'
import type { TelephoneSet } from '../../src/catalog/telephone-set'
import type { Wire } from '../../src/catalog/wire'

/** Without leakage, since the circuit simulator's lossy line knows none; the figures are round ones. */
const WIRE: Wire = {
  id: 'bench',
  name: 'Bench pair',
  loopOhmPerKm: 130,
  tempCoeffPerC: 0.0039,
  nanoFPerKm: 60,
  loopMilliHPerKm: 0.7,
  dryMicroSPerKm: 0,
  wetMicroSPerKm: 0,
  kgPerKm: 13,
  breakN: 800,
  spoolsM: [400],
  source: 'invented',
}

const SET: TelephoneSet = {
  id: 'bench',
  name: 'Bench set',
  talk: 'common',
  offHook: { dcOhms: 200, acOhms: 600, minMA: 20 },
  ringer: { ohms: 6930, microF: 8, minVolts: 40 },
  maxLossDb: 25,
  source: 'invented',
}

const SUPPLY: Supply = {
  id: 'bench',
  name: 'Bench feed',
  kind: 'feed',
  volts: 48,
  ohms: 400,
  ring: { volts: 86, hz: 20, ohms: 450 },
  source: 'invented',
}

/** A tree of so many lines of 100 to 600 m, with sets at some of its stations and a ringing feed at its root. */
export function randomTree(lineCount: number, setCount: number): CircuitModel {
  let state = 7
  const random = () => {
    state = (state * 48271) % 2147483647
    return state / 2147483647
  }
  const stations = Array.from({ length: lineCount + 1 }, (_, node) => `s${node}`)
  const lines = Array.from({ length: lineCount }, (_, k) => ({
    id: `l${k}`,
    from: Math.floor(Math.max(0, k - 4) + random() * Math.min(k + 1, 5)),
    to: k + 1,
    wire: WIRE,
    wireM: 100 + 500 * random(),
    electrodeOhms: null,
  }))
  const sets = Array.from({ length: setCount }, (_, k) => ({
    node: Math.round(((k + 1) * lineCount) / setCount),
    set: SET,
  }))
  return { stations, lines, sets, supply: { supply: SUPPLY, node: 0 } }
}
