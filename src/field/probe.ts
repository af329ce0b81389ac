import type { CircuitModel, ModelLine, ModelSet } from '../budget/circuit-model'
import { type Complex, complex, divide, ONE } from '../budget/complex'
import { shortestWay } from '../budget/path'
import { onHookSiemens } from '../budget/ringer'
import { VOICE_HZ } from '../budget/voice-loss'

/** What a meter tells, and what was done with the far end. */
export type What = 'loopOhms' | 'nanoF' | 'kOhms' | 'ringVolts' | 'mA' | 'lossDb'
export type Far = 'open' | 'short' | 'set'

/** A circuit cut where an instrument stands: it looks one way, and nothing behind it counts. */
export interface Stand {
  /** Its lines are the pieces into which the cut left them. */
  readonly model: CircuitModel
  /** Of which line each piece is, and at how many metres from that line's `from` it begins. */
  readonly pieces: readonly Piece[]
  readonly meter: number
  readonly far: number
  /** Which pieces lie on the way from the meter to the far end. */
  readonly way: ReadonlySet<number>
}

export interface Piece {
  readonly line: string
  readonly fromM: number
}

/** What an instrument looks into, ready to be reckoned: a network with loads, seen from one node or two. */
export interface Probe {
  readonly model: CircuitModel
  readonly pieces: readonly Piece[]
  readonly hz: number
  /** The instrument balances the leakage of the wire out. */
  readonly isLossless?: true
  readonly shunts: readonly { readonly node: number; readonly siemens: Complex }[]
  /** Where it is seen from: the meter, or the source and the meter. */
  readonly ports: readonly number[]
  /** What the instrument shows, in its own unit, from the impedances between the ports, Ω, row by row. */
  readonly shows: (re: Float64Array, im: Float64Array) => number
}

/** A capacitance is read so slowly, Hz, that the wire's ohms do not matter to it. */
const SLOW_HZ = 1

/** Two wires that are joined at the far end are taken to have this much between them, S. */
const JOINED: Complex = complex(1e6)

const wholePieces = (lines: readonly ModelLine[]): Piece[] => lines.map(({ id }) => ({ line: id, fromM: 0 }))

/** The whole circuit, cut nowhere. */
export const standNowhere = (model: CircuitModel, meter: number, far: number): Stand => ({
  model,
  pieces: wholePieces(model.lines),
  meter,
  far,
  way: new Set(model.lines.keys()),
})

/** An instrument at a station, looking towards another; null where no way leads there. */
export function standAtStation(model: CircuitModel, at: string, toward: string): Stand | null {
  const [node, far] = [model.stations.indexOf(at), model.stations.indexOf(toward)]
  if (node === -1 || far === -1 || node === far) return null
  const way = shortestWay(model, node, far)
  const first = way?.[0]
  if (!first) return null
  const meter = model.stations.length
  const lines = model.lines.map((line) =>
    line === first ? { ...line, ...(line.from === node ? { from: meter } : { to: meter }) } : line,
  )
  const onWay = new Set(way)
  return {
    model: { ...model, stations: [...model.stations, '\nmeter'], lines },
    pieces: wholePieces(lines),
    meter,
    far,
    way: new Set([...model.lines.keys()].filter((k) => onWay.has(model.lines[k]!))),
  }
}

/** An instrument on a line, so far along its wire from `from`, looking to one of its ends; null where the circuit has no such line. */
export function standOnLine(
  model: CircuitModel,
  id: string,
  wireM: number,
  toward: 'from' | 'to',
): Stand | null {
  const index = model.lines.findIndex((line) => line.id === id && line.wireM > 0)
  const line = model.lines[index]
  if (!line) return null
  const [meter, loose] = [model.stations.length, model.stations.length + 1]
  const [fromOhm, toOhm] = line.electrodeOhms ?? [0, 0]
  const byEarth = line.electrodeOhms !== null
  const near: ModelLine = {
    ...line,
    to: toward === 'from' ? meter : loose,
    wireM,
    electrodeOhms: byEarth ? [fromOhm, 0] : null,
  }
  const rest: ModelLine = {
    ...line,
    from: toward === 'from' ? loose : meter,
    wireM: Math.max(0, line.wireM - wireM),
    electrodeOhms: byEarth ? [0, toOhm] : null,
  }
  const lines = [...model.lines.with(index, near), rest]
  return {
    model: { ...model, stations: [...model.stations, '\nmeter', '\nloose'], lines },
    pieces: lines.map((each, k) => ({ line: each.id, fromM: k === lines.length - 1 ? wireM : 0 })),
    meter,
    far: toward === 'from' ? line.from : line.to,
    way: new Set([toward === 'from' ? index : lines.length - 1]),
  }
}

/** A stand with only the pieces on the way: all that branches off is taken off. */
export function onlyTheWay(stand: Stand): Stand {
  const kept = [...stand.model.lines.keys()].filter((k) => stand.way.has(k))
  return {
    ...stand,
    model: { ...stand.model, lines: kept.map((k) => stand.model.lines[k]!) },
    pieces: kept.map((k) => stand.pieces[k]!),
    way: new Set(kept.keys()),
  }
}

const bell = ({ node, set }: ModelSet, hz: number) => ({ node, siemens: onHookSiemens(set, hz) })

/**
 * What an instrument reads into. With the far end open or shorted all sets are off, unless `setsOn` leaves those at other stations; with the
 * set at the far end they are on hook. `ringVolts`: the set or the supply at the far end rings. `mA`: what an ammeter across the pair
 * draws from the supply. `lossDb`: speech from the set at the far end into one of its like. Null where nothing there could give such a reading.
 */
export function probeOf(stand: Stand, what: What, far: Far, setsOn = false): Probe | null {
  const { model, pieces, meter } = stand
  const of = (hz: number, ports: readonly number[], shunts: Probe['shunts'], shows: Probe['shows']) => ({
    model,
    pieces,
    hz,
    ports,
    shunts,
    shows,
  })
  const atFar = model.sets.find(({ node }) => node === stand.far)
  const on = far === 'set' ? model.sets : setsOn ? model.sets.filter((set) => set !== atFar) : []
  const bells = (hz: number, but?: ModelSet) => on.filter((set) => set !== but).map((set) => bell(set, hz))
  const joined = far === 'short' ? [{ node: stand.far, siemens: JOINED }] : []
  switch (what) {
    case 'loopOhms':
    case 'kOhms': {
      const unit = what === 'kOhms' ? 1000 : 1
      return of(0, [meter], [...bells(0), ...joined], (re) => re[0]! / unit)
    }
    case 'nanoF': {
      const farads = (re: Float64Array, im: Float64Array) =>
        divide(ONE, complex(re[0]!, im[0]!)).im / (2 * Math.PI * SLOW_HZ)
      const seen = of(SLOW_HZ, [meter], [...bells(SLOW_HZ), ...joined], (re, im) => farads(re, im) * 1e9)
      return { ...seen, isLossless: true }
    }
    case 'ringVolts':
      return far === 'set' ? ringProbe(stand, stand.far) : null
    case 'mA':
      return far === 'set' ? supplyProbe(stand) : null
    case 'lossDb':
      return far === 'set' && atFar ? speechProbe(stand, atFar, { node: meter, set: atFar.set }) : null
  }
}

/** Volts at the meter from what rings at a node: its set's crank, or the supply there. */
export function ringProbe({ model, pieces, meter }: Stand, from: number): Probe | null {
  const set = model.sets.find((each) => each.node === from && each.set.generator)
  const supply = model.supply?.node === from ? model.supply.supply : undefined
  const source =
    set?.set.generator ??
    (supply?.kind === 'board' ? supply.generator : supply?.kind === 'series' ? undefined : supply?.ring)
  if (!source) return null
  const { hz, ohms } = source
  const volts = source.volts * 10 ** (-(model.coils?.ringDb ?? 0) / 20)
  const shunts = model.sets.filter((each) => each !== set).map((each) => bell(each, hz))
  const shows = (re: Float64Array, im: Float64Array) =>
    (volts * Math.hypot(re[1]!, im[1]!)) / Math.hypot(re[0]! + Math.max(ohms, 1e-6), im[0]!)
  return { model, pieces, hz, ports: [from, meter], shunts, shows }
}

/** Loss of speech from one set to another, dB: see `eachVoice`. */
export function speechProbe({ model, pieces }: Stand, from: ModelSet, to: ModelSet): Probe {
  const [za, zb] = [from.set.offHook.acOhms, to.set.offHook.acOhms]
  const others = model.sets.filter(({ node }) => node !== from.node && node !== to.node)
  const shunts = [...others.map((each) => bell(each, VOICE_HZ)), { node: to.node, siemens: complex(1 / zb) }]
  const shows = (re: Float64Array, im: Float64Array) => {
    const heard = Math.hypot(re[1]!, im[1]!) / Math.hypot(re[0]! + za, im[0]!)
    return 20 * Math.log10(zb / (za + zb) / heard) + (model.coils?.voiceDb ?? 0)
  }
  return { model, pieces, hz: VOICE_HZ, ports: [from.node, to.node], shunts, shows }
}

/** Milliamperes of the supply through an ammeter that joins the wires at the meter. */
function supplyProbe({ model, pieces, meter }: Stand): Probe | null {
  if (!model.supply) return null
  const { supply, node } = model.supply
  if (supply.kind === 'board') return null
  const carrier =
    supply.kind === 'series' ? model.sets.find((each) => each.node === node)?.set.offHook : undefined
  const volts = supply.volts - (supply.indicator?.forwardVolts ?? 0) - (carrier?.dropVolts ?? 0)
  const ohms = Math.max(1e-3, supply.ohms + (supply.indicator?.ohms ?? 0) + (carrier?.dcOhms ?? 0))
  const others = model.sets.filter((each) => !carrier || each.node !== node)
  const shunts = [...others.map((each) => bell(each, 0)), { node, siemens: complex(1 / ohms) }]
  const shows = (re: Float64Array) =>
    Math.min(supply.maxMA ?? Number.POSITIVE_INFINITY, (1000 * Math.max(0, volts) * re[1]!) / ohms / re[3]!)
  return { model, pieces, hz: 0, ports: [node, meter], shunts, shows }
}
