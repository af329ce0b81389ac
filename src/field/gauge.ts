import type { ModelLine } from '../budget/circuit-model'
import { add, ONE } from '../budget/complex'
import type { Conditions } from '../budget/conditions'
import { type Elimination, planElimination } from '../budget/elimination'
import { constantsOf } from '../budget/line-constants'
import { addPi, addShunt, emptyAdmittances, factorNetwork, voltagesFrom } from '../budget/network'
import { type Chain, chainOf, type Kilometre, kilometreOf, piOf } from '../budget/uniform-line'
import type { Wire } from '../catalog/wire'
import { type FaultElement, ohmsThroughFault, type Ports, throughFault } from './fault-ports'
import type { Probe } from './probe'
import { matters, scaledWire, type WireFigure } from './wire-figures'

/** What an instrument shows with each figure of the wire as it is taken to be, and then with each in turn a little greater. */
export interface Gauge {
  /** With every line sound. */
  readonly sound: () => Float64Array
  /** With a fault on a line; a place on no piece of the network is as sound. `side`: which piece is meant where one ends and another begins. */
  readonly at: (line: string, wireM: number, side?: number) => Placed
}

/** What an instrument shows with a fault at one place. */
export interface Placed {
  /** With the figures as they are taken to be. */
  readonly first: (fault: FaultElement, ohms: number) => number
  /** The same, and then with each figure in turn a little greater. */
  readonly all: (fault: FaultElement, ohms: number) => Float64Array
}

/** Each figure is tried this much greater, nepers: what is shown follows nearly in proportion. */
export const STEP_NEPERS = 0.02

/** Every node leaks this much, S, so that one that is cut off has a potential too: 10 GΩ. */
const LEAK_S = 1e-10

interface Network {
  readonly kilometres: readonly Kilometre[]
  /** Impedances between the ports, and the two ends of the piece that is left out where one is, by that piece; −1: none. */
  readonly seen: Map<number, Ports>
}

const electrodes = ({ electrodeOhms }: ModelLine): readonly [number, number] => electrodeOhms ?? [0, 0]

/**
 * Reckons what an instrument shows, by the network of the circuit: the piece with the fault is taken out, the rest is reduced to its
 * ports once, and the piece is laid in again as a two-port with the fault at any place.
 *
 * @param nepers by how much each figure of the wire is taken greater than in the catalog; absent: not at all
 */
export function gaugeOf(
  probe: Probe,
  conditions: Conditions,
  figures: readonly WireFigure[],
  nepers: ArrayLike<number> = new Float64Array(figures.length),
): Gauge {
  const { model, hz, ports, shunts } = probe
  const { lines } = model
  const shapes = new Map<number, Elimination>()
  const shapeWithout = (piece: number): Elimination => {
    const known = shapes.get(piece)
    if (known) return known
    const edges = lines.filter((_, k) => k !== piece)
    const shape = planElimination(model.stations.length, edges)
    shapes.set(piece, shape)
    return shape
  }

  const networkOf = (besides?: { readonly figure: number; readonly nepers: number }): Network => {
    const wires = new Map<Wire, Wire>()
    const kilometres = new Map<string, Kilometre>()
    const kilometreFor = (line: ModelLine): Kilometre => {
      const key = `${line.wire.id} ${line.electrodeOhms !== null} ${line.worn ?? ''} ${line.splices?.ohmPerKm ?? ''} ${line.splices?.wetSiemensPerKm ?? ''}`
      const known = kilometres.get(key)
      if (known) return known
      const wire = wires.get(line.wire) ?? scaledWire(line.wire, figures, nepers, besides)
      wires.set(line.wire, wire)
      const constants = constantsOf({ ...line, wire }, conditions)
      const kilometre = kilometreOf(probe.isLossless ? { ...constants, siemensPerKm: 0 } : constants, hz)
      kilometres.set(key, kilometre)
      return kilometre
    }
    return { kilometres: lines.map(kilometreFor), seen: new Map() }
  }

  const seenWithout = ({ kilometres, seen }: Network, piece: number): Ports => {
    const known = seen.get(piece)
    if (known) return known
    const shape = shapeWithout(piece)
    const y = emptyAdmittances(shape)
    let edge = 0
    for (const [k, line] of lines.entries()) {
      if (k === piece) continue
      addPi(y, shape.branchOfEdge[edge++]!, line, piOf(kilometres[k]!, line.wireM / 1000, line.electrodeOhms))
    }
    for (const { node, siemens } of shunts) addShunt(y, node, siemens)
    for (let node = 0; node < shape.nodeCount; node++) y.shuntRe[node]! += LEAK_S
    const factors = factorNetwork(shape, y)
    const out = lines[piece]
    const nodes = out ? [...ports, out.from, out.to] : ports
    const size = nodes.length
    const re = new Float64Array(size * size)
    const im = new Float64Array(size * size)
    for (const [row, from] of nodes.entries()) {
      const volts = voltagesFrom(factors, from)
      for (const [column, to] of nodes.entries()) {
        re[row * size + column] = volts.re[to]!
        im[row * size + column] = volts.im[to]!
      }
    }
    const found = { re, im, size }
    seen.set(piece, found)
    return found
  }

  const isPlain = hz === 0 && ports.length === 1
  const [real, nought] = [new Float64Array(1), new Float64Array(1)]
  const isTried = figures.map((figure) =>
    lines.some((line) => line.wireM > 0 && matters(figure, line, conditions.weather, hz)),
  )
  const networks = [
    networkOf(),
    ...figures.map((_, figure) => (isTried[figure] ? networkOf({ figure, nepers: STEP_NEPERS }) : null)),
  ]
  /** What is shown by each network; one that does not differ from the first shows the same. */
  const shown = (of: (network: Network) => number): Float64Array => {
    const values = new Float64Array(networks.length)
    for (const [k, network] of networks.entries()) values[k] = network ? of(network) : values[0]!
    return values
  }
  let soundValues: Float64Array | undefined
  const sound = (): Float64Array => {
    soundValues ??= shown((network) => {
      const { re, im } = seenWithout(network, -1)
      return probe.shows(re, im)
    })
    return soundValues
  }

  const pieceAt = (line: string, wireM: number): number =>
    probe.pieces.findIndex(
      (piece, k) =>
        piece.line === line &&
        lines[k]!.wireM > 0 &&
        wireM >= piece.fromM &&
        wireM <= piece.fromM + lines[k]!.wireM,
    )

  const at: Gauge['at'] = (line, wireM, side = wireM) => {
    const piece = pieceAt(line, side)
    const own = lines[piece]
    if (!own) return { first: () => sound()[0]!, all: sound }
    const [fromOhm, toOhm] = electrodes(own)
    const alongM = Math.min(own.wireM, Math.max(0, wireM - probe.pieces[piece]!.fromM))
    const stubs = networks.map((network) => {
      if (!network) return null
      const kilometre = network.kilometres[piece]!
      const near = chainOf(kilometre, alongM / 1000, [fromOhm, 0])
      const rest = chainOf(kilometre, (own.wireM - alongM) / 1000, [0, toOhm])
      return { seen: seenWithout(network, piece), near: whole(near), rest: whole(rest) }
    })
    const shownBy = (k: number, fault: FaultElement, ohms: number): number => {
      const { seen, near, rest } = stubs[k]!
      if (isPlain) {
        real[0] = ohmsThroughFault(seen, near, rest, fault, ohms)
        return probe.shows(real, nought)
      }
      const { re, im } = throughFault(seen, near, rest, fault, ohms)
      return probe.shows(re, im)
    }
    return {
      first: (fault, ohms) => shownBy(0, fault, ohms),
      all: (fault, ohms) => {
        const values = new Float64Array(stubs.length)
        for (const [k, stub] of stubs.entries()) values[k] = stub ? shownBy(k, fault, ohms) : values[0]!
        return values
      },
    }
  }
  return { sound, at }
}

/** A chain matrix as eight numbers: A, B, C, D, each with its two parts. */
function whole({ aLessOne, bOhm, cSiemens, dLessOne }: Chain): Float64Array {
  const [a, d] = [add(ONE, aLessOne), add(ONE, dLessOne)]
  return Float64Array.of(a.re, a.im, bOhm.re, bOhm.im, cSiemens.re, cSiemens.im, d.re, d.im)
}
