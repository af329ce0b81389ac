import type { StationId } from '../../plan/id'
import { type Circuit, circuitName, type Plan, stationName } from '../../plan/plan'
import { ringCodes } from '../../plan/ring-code'
import { telephonesOn } from '../../report/through-calls'
import { ringWords } from '../../words/ring-words'
import type { Block } from '../layout/block'
import { inFewestSheets, LARGE, type Letters, TIGHT, tableBlock, USUAL } from '../layout/fewest-sheets'
import type { SheetRoom } from '../layout/paper-size'
import type { Table } from '../layout/table'
import { circuitsIn } from '../paper-scope'
import type { PaperSource } from '../paper-source'

interface Entry {
  readonly name: string
  readonly on: string
  readonly number: string
  readonly how: string
}

/** Who is reached how: names in the order of the alphabet, each with its number or its ring. In large print where that takes no more sheets. */
export const directory = (source: PaperSource, room: SheetRoom): readonly Block[] =>
  inFewestSheets((letters) => directoryBlocks(source, letters), [LARGE, USUAL, TIGHT], room)

/** The same in letters of one size. */
export function directoryBlocks(source: PaperSource, letters: Letters): readonly Block[] {
  const entries = circuitsIn(source).flatMap(({ id }) => {
    const circuit = source.plan.circuits.get(id)
    return circuit ? entriesOf(source, circuit) : []
  })
  if (entries.length === 0) return []
  const sorted = entries.toSorted((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }))
  return [
    {
      kind: 'text',
      isSmall: letters.isTight ?? false,
      text: 'A number is a jack of the board or a port of the exchange. One long ring is for everybody on a line.',
    },
    ...tableBlock(tableOf(sorted), letters),
  ]
}

const tableOf = (entries: readonly Entry[]): Table => ({
  title: 'Directory',
  columns: [
    { head: 'Name', share: 54 },
    { head: 'On', share: 44 },
    { head: 'Number or ring', share: 38 },
    { head: 'How to call', share: 54 },
  ],
  rows: entries.map(({ name, on, number, how }) => [name, on, number, how]),
})

function entriesOf(source: PaperSource, circuit: Circuit): readonly Entry[] {
  const { plan, report } = source
  const on = circuitName(plan, circuit)
  const board = report.circuits.find(({ id }) => id === circuit.id)?.switchboard
  if (board) {
    const at = stationName(plan, board.station)
    const how = board.kind === 'board' ? `crank; ask ${at}` : 'lift and dial'
    const party = new Map(
      board.jacks.flatMap(({ stations }) =>
        stations.length > 1
          ? [...ringCodes({ sets: new Map(stations.map((id) => [id as StationId, ''])) })]
          : [],
      ),
    )
    return telephonesOn(board).map(({ station, label }) => {
      const ring = party.get(station as StationId)
      const isOperator = label === 'op'
      return {
        name: stationName(plan, station),
        on,
        number: isOperator ? 'the operator' : `${label}${ring ? `: ${ringWords(ring)}` : ''}`,
        how: isOperator ? 'crank' : how,
      }
    })
  }
  const kind = source.catalog.supplies.get(circuit.supply?.type ?? '')?.kind
  const codes =
    circuit.sets.size > 2 && kind !== 'series' && kind !== 'ringdown' ? ringCodes(circuit) : new Map()
  return [...circuit.sets.keys()].map((station) => ({
    name: stationName(plan, station),
    on,
    number: codes.has(station) ? ringWords(codes.get(station)!) : '–',
    how: howWords(plan, source, circuit, kind),
  }))
}

function howWords(
  plan: Plan,
  { catalog }: PaperSource,
  { sets, supply }: Circuit,
  kind: string | undefined,
): string {
  if (kind === 'series') return 'at times agreed'
  if (kind === 'ringdown') return 'lift: the other side rings'
  const cranks = [...sets.values()].some((type) => catalog.sets.get(type)?.generator)
  if (cranks) return 'crank'
  return supply ? `ring from ${stationName(plan, supply.at)}` : 'at times agreed'
}
