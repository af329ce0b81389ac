import { conditionsOf } from '../../budget/conditions'
import { measurePlan } from '../../measure/measure-line'
import type { CircuitId, LineId, StationId } from '../../plan/id'
import { type PairEnd, pairEndsAt, sidesAt } from '../../plan/pair-ends'
import { type Circuit, circuitName, type Plan, stationName } from '../../plan/plan'
import { ALL_RING, type Ring } from '../../plan/ring-code'
import { circuitNetwork } from '../../report/circuit-network'
import { ringWords } from '../../words/ring-words'
import { nameIn } from '../../words/tongue'
import { plainNumber } from '../../words/units'
import { lineNumber } from '../line-marks'
import type { PaperSource } from '../paper-source'
import { type Equipment, type HookUp, MOST_ENDS, type WireEnd } from '../scene/hook-up'
import { type CircuitCalls, circuitCalls, type Deed } from '../station-calls'

/** Who calls whom on every circuit, once for all cards. */
export function callsOfNet({
  plan,
  report,
  catalog,
  ground,
}: PaperSource): ReadonlyMap<CircuitId, CircuitCalls> {
  const measured = measurePlan(plan, ground)
  const conditions = conditionsOf(plan.weather, plan.wireTempC)
  return new Map(
    report.circuits.flatMap((found) => {
      const circuit = plan.circuits.get(found.id)
      if (!circuit) return []
      const model = circuitNetwork(plan, circuit, catalog, measured)
      return [[circuit.id, circuitCalls(circuit, found, model, conditions)] as const]
    }),
  )
}

function wireEnd({ plan, ...source }: PaperSource, station: StationId, end: PairEnd): WireEnd {
  const line = plan.lines.get(end.line)!
  const number = lineNumber({ plan, ...source }, line.id)
  const pair = line.return === 'earth' ? ', earth return' : line.pairs > 1 ? `, pair ${end.pair}` : ''
  return {
    name: `Line ${number}${pair}${end.rider ? ', through its repeating coil' : ''}`,
    from: `to ${stationName(plan, line.from === station ? line.to : line.from)}`,
    posts: end.posts,
    isEarth: line.return === 'earth',
  }
}

/** What rides on pairs comes in at the middles of their repeating coils; of a simplex the other side goes to earth. */
function riderEnds(
  { plan, ...source }: PaperSource,
  circuit: Circuit,
  station: StationId,
  ends: readonly PairEnd[],
): readonly WireEnd[] {
  return circuit.lines.flatMap((id) => {
    const pairs = ends.filter(({ line, rider }) => line === id && rider === circuit.id)
    const line = plan.lines.get(id)!
    if (pairs.length === 0) return []
    const isEarth = circuit.over === 'simplex'
    const on = pairs.map(({ pair }) => pair).join(' and ')
    return [
      {
        name: `Line ${lineNumber({ plan, ...source }, id)}, ${circuit.over}: middle of the coil on pair ${on}`,
        from: `to ${stationName(plan, line.from === station ? line.to : line.from)}`,
        posts: isEarth ? (['C', 'E'] as const) : (['C', 'C'] as const),
        isEarth,
      },
    ]
  })
}

/** Everything that is tied together at a station: each circuit by itself, on a unit each of its sides by itself, and what is spare. */
export function hookUpsAt(source: PaperSource, station: StationId): readonly HookUp[] {
  const { plan } = source
  const all = pairEndsAt(plan, station)
  const hookUps = [...plan.circuits.values()].flatMap((circuit) =>
    hookUpsOf(
      source,
      circuit,
      station,
      all.filter((end) => (circuit.over ? end.rider : end.circuit) === circuit.id),
    ),
  )
  const spare = all.filter(({ circuit }) => circuit === undefined)
  const spares: HookUp = {
    title: 'Spare: leave the ends apart and taped',
    ends: spare.map((end) => wireEnd(source, station, end)),
    equipment: [],
  }
  return [...hookUps, ...(spare.length > 0 ? [spares] : [])].flatMap(partedByEnds)
}

function hookUpsOf(
  source: PaperSource,
  circuit: Circuit,
  station: StationId,
  own: readonly PairEnd[],
): readonly HookUp[] {
  const { plan, catalog } = source
  const setId = circuit.sets.get(station)
  const supplyType = circuit.supply?.at === station ? circuit.supply.type : undefined
  if (own.length === 0 && setId === undefined && supplyType === undefined) return []
  const title = circuitName(plan, circuit)
  const set: readonly Equipment[] = setId === undefined ? [] : [{ what: nameIn(plan, setId) }]
  const ends = (of: readonly PairEnd[]) =>
    circuit.over ? riderEnds(source, circuit, station, of) : of.map((end) => wireEnd(source, station, end))
  if (supplyType === undefined) return [{ title, ends: ends(own), equipment: set }]

  const kind = catalog.supplies.get(supplyType)?.kind
  const what = nameIn(plan, supplyType)
  if (kind === 'series') return [{ title, ends: ends(own), equipment: [{ what, inOneLeg: true }, ...set] }]
  if (kind === 'feed') return [{ title, ends: ends(own), equipment: [{ what }, ...set] }]
  // A unit that keeps its sides apart: each side on a port, and the station's own set on one more; at a board that is the operator's, on none.
  const sides = sidesAt(plan, circuit, station)
  const ofSide = (side: readonly LineId[]) => own.filter(({ line }) => side.includes(line))
  const port = kind === 'board' ? 'jack' : 'port'
  const ownPlace = kind === 'board' ? 'operator' : `port ${sides.length + 1}`
  // Its name and the circuit's are said once: the others are the same unit's.
  const unit = (which: string, isFirst: boolean) => ({
    what: isFirst ? `${what}, ${which}` : `the same, ${which}`,
  })
  return [
    ...sides.map((side, i) => ({
      title: i === 0 ? title : '',
      ends: ends(ofSide(side)),
      equipment: [unit(`${port} ${i + 1}`, i === 0)],
    })),
    // Its own set is tied to it where it stands: no wire comes in.
    ...set.map(({ what: own }) => ({
      title: sides.length === 0 ? title : '',
      ends: [],
      equipment: [{ what: `${unit(ownPlace, sides.length === 0).what}: ${own}` }],
    })),
  ]
}

/** A hook-up with more pairs than one drawing holds, as several that name each other. */
function partedByEnds(whole: HookUp): readonly HookUp[] {
  const count = Math.max(1, Math.ceil(whole.ends.length / MOST_ENDS))
  return Array.from({ length: count }, (_, i) => ({
    title:
      i === 0
        ? whole.title
        : [whole.title, `joined with posts ${whole.ends[0]!.posts.join(' and ')}`].filter(Boolean).join(', '),
    ends: whole.ends.slice(i * MOST_ENDS, (i + 1) * MOST_ENDS),
    equipment: i === 0 ? whole.equipment : [],
  }))
}

const code = (rings: readonly Ring[] | null) => (rings ? `: ${ringWords(rings)}` : '')

function deedWords(plan: Plan, deed: Deed): string {
  switch (deed.do) {
    case 'crank':
      return `crank${code(deed.code)}`
    case 'ring':
      return `ring${code(deed.code)}`
    case 'rung-from':
      return `${stationName(plan, deed.at)} rings${code(deed.code)}`
    case 'lift-rings':
      return 'lift: it rings there'
    case 'lift-lamp':
      return 'lift: the lamp there lights'
    case 'dial':
      return 'lift and dial'
    case 'by-operator':
      return `crank; ${stationName(plan, deed.at)} puts you through`
    case 'agree':
      return 'agree on times to lift'
    case 'nothing':
      return 'no way to call'
  }
}

const voltsWords = (row: { readonly volts: number; readonly minVolts: number } | null) =>
  row ? `${row.volts.toFixed(row.volts < 10 ? 1 : 0)} of ${plainNumber(row.minVolts)}` : '–'

/** Who is called how from a station, and what rings; and its own ring, where the line has codes. */
export function callsAt(
  plan: Plan,
  { codes, from }: CircuitCalls,
  station: StationId,
): { readonly ownRing: string; readonly rows: readonly (readonly string[])[] } {
  const own = codes.get(station)
  return {
    ownRing: own ? `Your ring: ${ringWords(own)}. Everybody: one ${ringWords(ALL_RING)}.` : '',
    rows: from(station).map((call) => [
      stationName(plan, call.station),
      deedWords(plan, call.deed),
      voltsWords(call.there),
      voltsWords(call.here),
    ]),
  }
}
