import { circuitModel } from '../../src/budget/circuit-model'
import { circuitRows } from '../../src/budget/circuit-rows'
import { completenessOf } from '../../src/budget/completeness'
import { conditionsOf } from '../../src/budget/conditions'
import { worstCorner } from '../../src/budget/envelope'
import type { Verdict } from '../../src/budget/rows'
import { RANK, verdictOf } from '../../src/budget/verdict'
import { CELLS } from '../../src/catalog/cells'
import type { Supply } from '../../src/catalog/supply'
import { longestChainM } from '../../src/materials/spool-kinds'
import { measureLine } from '../../src/measure/measure-line'
import { connectedPieces } from '../../src/plan/circuit-topology'
import type { CircuitId, LineId, StationId } from '../../src/plan/id'
import { type Circuit, EMPTY_PLAN, type Line, type Plan, type Station } from '../../src/plan/plan'
import type { Shelf } from '../../src/shelf/shelf'

/** Marks a wire of which one conductor is laid, with the earth for the other. */
const EARTH = '~'

/**
 * The best that can be made of a small shelf without a joint, by putting together every net there is as a plan, without looking ahead: for
 * each two places no wire, one, or two, of every kind; for each place every telephone; for each circuit no supply, or each at every place.
 * With earth rods also one conductor of each, with a rod of so many ohms at either end.
 * Nothing of it is shared with the search under test but the course of a line between two places.
 *
 * Rank: whether it holds at worst, pairs that must be rung and cannot call (negative), verdict, verdict at worst, lines that return through the
 * earth (negative), tenths to spare at worst up to
 * five, metres of wire (negative).
 */
export function bestByHand(
  shelf: Shelf,
  bare: Plan,
  bendsOf: (a: number, b: number) => Line['bends'],
  earth?: { readonly rods: number; readonly ohms: number },
) {
  const { places, catalog, have, talk } = shelf
  const stations = new Map<StationId, Station>(bare.stations)
  const idOf = (p: number) => places[p]!.id as StationId
  const pairs = places.flatMap((_, a) => places.slice(a + 1).map((__, k) => [a, a + k + 1] as const))
  const wires = [...new Set(have.wires.map(({ wire }) => wire))]
  const reachM = new Map(
    wires.map((wire) => [
      wire,
      longestChainM(
        have.wires.filter((each) => each.wire === wire),
        EMPTY_PLAN.allowances.spliceWasteM,
      ),
    ]),
  )
  const line = (id: string, a: number, b: number, wire: string): Line => {
    const bends = bendsOf(a, b)
    const legs = [...bends, 0].map(() => ({ lay: 'surface' as const }))
    const course = { id: id as LineId, from: idOf(a), to: idOf(b), pairs: 1, bends, legs }
    if (!wire.endsWith(EARTH)) return { ...course, wire, return: 'pair' }
    const electrodeOhms = [earth!.ohms, earth!.ohms] as const
    return { ...course, wire: wire.slice(0, -EARTH.length), return: 'earth', electrodeOhms }
  }
  const basis: Plan = { ...EMPTY_PLAN, stations, catalog: bare.catalog }
  const wireM = (a: number, b: number) => measureLine(basis, line('x', a, b, ''), undefined).wireM

  /** Nothing, one wire or two, for each pair of places in turn. */
  const none: (readonly string[])[] = [[]]
  const bundles = none.concat(
    wires.map((wire) => [wire]),
    wires.flatMap((one, i) => wires.slice(i).map((two) => [one, two])),
    earth ? wires.map((wire) => [wire + EARTH]) : [],
  )
  /** Half of a pair is one wire, and two of them lie in it: a net has pairs of a wire, or its wires apart. */
  const isEnough = () =>
    wires.every((wire) => {
      const [pairM, apartM] = [used.get(wire) ?? 0, used.get(wire + EARTH) ?? 0]
      return pairM <= reachM.get(wire)! && apartM <= 2 * reachM.get(wire)! && (pairM < 1e-9 || apartM < 1e-9)
    }) && chosen.flat().filter((wire) => wire.endsWith(EARTH)).length * 2 <= (earth?.rods ?? 0)
  let best: readonly number[] | undefined
  let nets = 0
  const chosen: (readonly string[])[] = []
  const used = new Map<string, number>()
  const lay = (k: number): void => {
    if (k === pairs.length) {
      equip()
      return
    }
    const [a, b] = pairs[k]!
    for (const bundle of bundles) {
      for (const wire of bundle) used.set(wire, (used.get(wire) ?? 0) + wireM(a, b))
      chosen[k] = bundle
      if (isEnough()) lay(k + 1)
      for (const wire of bundle) used.set(wire, used.get(wire)! - wireM(a, b))
      chosen[k] = []
    }
  }

  const equip = (): void => {
    const joined = pairs.filter((_, k) => chosen[k]!.length > 0)
    const ends = new Map(joined.map(([a, b], k) => [`${k}` as LineId, { from: idOf(a), to: idOf(b) }]))
    const pieces = connectedPieces([...ends.keys()], (id) => ends.get(id)).map((ids) => {
      const edges = ids.map((id) => joined[Number(id)]!)
      return { edges, block: [...new Set(edges.flat())].sort() }
    })
    if (pieces.flatMap(({ block }) => block).length < places.length) return
    if (!pieces.every(({ edges, block }) => isTreeOrRing(edges, block))) return
    const pieceOf = (p: number) => pieces.findIndex(({ block }) => block.includes(p))
    if (!talk.every(([a, b]) => pieceOf(a) === pieceOf(b))) return
    const lines = new Map<LineId, Line>()
    for (const [k, [a, b]] of pairs.entries())
      for (const wire of chosen[k]!) {
        const id = `l${lines.size + 1}` as LineId
        lines.set(id, line(id, a, b, wire))
      }
    for (const sets of assignments(places.length, have.sets)) supply(pieces, lines, sets, [])
  }

  type Piece = { readonly edges: readonly (readonly [number, number])[]; readonly block: readonly number[] }
  type Fed = {
    readonly supply: Supply
    readonly at: number
    readonly cell?: string
    readonly cells: number
  } | null
  const supply = (
    pieces: readonly Piece[],
    lines: ReadonlyMap<LineId, Line>,
    sets: readonly string[],
    fed: readonly Fed[],
  ): void => {
    const piece = pieces[fed.length]
    if (!piece) {
      judge(pieces, lines, sets, fed)
      return
    }
    supply(pieces, lines, sets, [...fed, null])
    for (const { id, count } of have.supplies) {
      const taken = fed.filter((each) => each && !each.cell && each.supply.id === id).length
      if (taken >= count) continue
      for (const at of piece.block)
        supply(pieces, lines, sets, [...fed, { supply: catalog.supplies.get(id)!, at, cells: 0 }])
    }
    for (const { id, count } of have.cells) {
      const taken = fed.reduce((sum, each) => sum + (each?.cell === id ? each.cells : 0), 0)
      const cell = CELLS.find((each) => each.id === id)!
      for (let cells = 1; cells <= count - taken; cells++)
        for (const at of piece.block) {
          const battery: Supply = {
            id: `${cells} of ${id}`,
            name: '',
            kind: 'series',
            cell: id,
            volts: cells * cell.volts,
            endVolts: cells * cell.endVolts,
            ohms: cells * cell.ohms,
            ampHours: cell.ampHours,
            source: '',
          }
          supply(pieces, lines, sets, [...fed, { supply: battery, at, cell: id, cells }])
        }
    }
  }

  const today = conditionsOf('dry', 20)
  const judge = (
    pieces: readonly Piece[],
    lines: ReadonlyMap<LineId, Line>,
    sets: readonly string[],
    fed: readonly Fed[],
  ): void => {
    nets++
    const supplies = fed.flatMap((each) => (each ? [each.supply] : []))
    const entries = {
      ...catalog,
      supplies: new Map([...catalog.supplies, ...supplies.map((s) => [s.id, s] as const)]),
    }
    const circuits = pieces.map(({ block }, k): Circuit => {
      const own = [...lines.values()].filter(({ from }) => block.some((p) => idOf(p) === from))
      const id = `c${k + 1}` as CircuitId
      return {
        id,
        name: id,
        lines: own.map((each) => each.id),
        sets: new Map(block.map((p) => [idOf(p), sets[p]!])),
        supply: fed[k] ? { type: fed[k].supply.id, at: idOf(fed[k].at) } : null,
      }
    })
    const plan: Plan = { ...basis, lines, circuits: new Map(circuits.map((each) => [each.id, each])) }
    const measured = new Map([...lines].map(([id, each]) => [id, measureLine(plan, each)]))
    let [verdict, worst]: Verdict[] = ['works', 'works']
    let [silent, spare] = [0, Number.POSITIVE_INFINITY]
    for (const [k, circuit] of circuits.entries()) {
      const model = circuitModel(plan, circuit, entries, measured)
      const { missing } = completenessOf(model, today)
      const rows = circuitRows(model, today)
      const own = verdictOf(rows, missing)
      if (own === 'fails') return
      const corner = worstCorner(model, today, missing)
      if (RANK[own] < RANK[verdict!]) verdict = own
      if (RANK[corner.verdict] < RANK[worst!]) worst = corner.verdict
      spare = Math.min(spare, corner.least?.nepers ?? 0)
      const { supply: at } = circuit
      const kind = fed[k]?.supply.kind
      for (const pair of talk) {
        const [a, b] = pair.map(idOf) as [StationId, StationId]
        if (!circuit.sets.has(a) || !circuit.sets.has(b)) continue
        if (kind === 'series' && a !== at?.at && b !== at?.at) return
        const rung = rows.ringing.some(({ from, to }) => (from === a && to === b) || (from === b && to === a))
        const bySupply =
          at !== null &&
          rows.ringing.some(({ from, to }) => from === at.at && (to === a || to === b)) &&
          !(kind === 'ringdown' && areOneSide(pieces[k]!.edges, pair, fed[k]!.at))
        const byBoard = kind === 'board' && (a === at?.at || b === at?.at)
        const isAgreed = shelf.agree.some(([c, d]) => c === pair[0] && d === pair[1])
        if (!rung && !bySupply && !byBoard && !isAgreed) silent++
      }
    }
    const totalM = [...measured.values()].reduce((sum, each) => sum + each.wireM, 0)
    const tenths = Math.floor(Math.min(10 * (Math.exp(spare) - 1), 5) + 1e-9)
    const holds = worst === 'fails' ? 0 : 1
    const earthed = [...lines.values()].filter((each) => each.return === 'earth').length
    const rank = [holds, -silent, RANK[verdict!], RANK[worst!], -earthed, tenths, -Math.round(totalM)]
    if (!best || isMore(rank, best)) best = rank
  }

  lay(0)
  return { rank: best, nets }
}

const isMore = (a: readonly number[], b: readonly number[]): boolean => {
  const k = a.findIndex((each, i) => each !== b[i])
  return k >= 0 && a[k]! > b[k]!
}

function isTreeOrRing(edges: readonly (readonly [number, number])[], block: readonly number[]): boolean {
  if (edges.length === block.length - 1) return true
  const degree = (p: number) => edges.filter((each) => each.includes(p)).length
  return edges.length === block.length && block.every((p) => degree(p) === 2)
}

/** Whether two places hang together where a third is taken out, or one of them is the third: its own set has a side to itself. */
function areOneSide(
  edges: readonly (readonly [number, number])[],
  [a, b]: readonly [number, number],
  without: number,
): boolean {
  if (a === without || b === without) return false
  const reached = new Set([a])
  for (let k = 0; k < edges.length; k++)
    for (const [x, y] of edges) {
      if (x === without || y === without) continue
      if (reached.has(x)) reached.add(y)
      if (reached.has(y)) reached.add(x)
    }
  return reached.has(b)
}

/** Every telephone at every place. */
function assignments(
  count: number,
  sets: readonly { readonly id: string; readonly count: number }[],
): readonly (readonly string[])[] {
  if (count === 0) return [[]]
  return sets.flatMap(({ id, count: there }) =>
    there < 1
      ? []
      : assignments(
          count - 1,
          sets.map((each) => (each.id === id ? { id, count: there - 1 } : each)),
        ).map((rest) => [id, ...rest]),
  )
}
