import { type Circuit, circuitName, stationName } from '../../plan/plan'
import type { ReportCircuit } from '../../report/report'
import type { Switchboard } from '../../report/switchboard'
import { faintSentence, trafficSentence } from '../../words/switchboard-words'
import { nameIn, tongueOf } from '../../words/tongue'
import { verdictSentence } from '../../words/verdict-words'
import type { Block } from '../layout/block'
import { circuitsIn } from '../paper-scope'
import type { PaperSource } from '../paper-source'
import { callTriangle } from '../tables/call-triangle'
import { jackTable } from '../tables/jack-table'

/** A circuit with a board or an exchange, as papers need it. */
export interface BoardOfNet {
  readonly circuit: Circuit
  readonly found: ReportCircuit
  readonly board: Switchboard
}

/** Every board and exchange that the papers are made for. */
export const boardsIn = (source: PaperSource): readonly BoardOfNet[] =>
  circuitsIn(source).flatMap((found) => {
    const circuit = source.plan.circuits.get(found.id)
    return circuit && found.switchboard ? [{ circuit, found, board: found.switchboard }] : []
  })

/** How a board of this kind is worked, in the trade's own order. Common practice of field and office boards. */
const WORKING: { readonly [K in Switchboard['kind']]: readonly string[] } = {
  board: [
    'A drop falls: join your telephone to that jack, put the drop back, answer with the name of the board.',
    'Ask whom they want, ring that jack with one long turn, or with the ring of the party on a shared line, and tell the caller when nobody answers.',
    'Join the two jacks, listen until they speak, and leave the line.',
    'Both ring off, or neither speaks any more: take the call down. Each hour ring and speak to every jack that was silent.',
  ],
  exchange: [
    'It joins lines by itself: lift, dial, wait for the ring. Nobody works it; look after its battery.',
    'Once a day lift at two stations and call through it both ways.',
  ],
}

/** What hangs beside a board: which pair on which jack, who it is, what falls and rings, which calls are faint, how it is worked. */
export function boardCard(source: PaperSource, { circuit, found, board }: BoardOfNet): readonly Block[] {
  const { plan, odds, system } = source
  const say = tongueOf(plan, system)
  const own = board.hasOperator ? ' The operator’s own telephone stands at it.' : ''
  const triangle = callTriangle(source, found, board)
  return [
    { kind: 'heading', text: `${stationName(plan, board.station)}: ${circuitName(plan, circuit)}` },
    {
      kind: 'text',
      text: `${nameIn(plan, circuit.supply!.type)}.${own} It ${verdictSentence(found, odds.get(circuit.id), say)}`,
    },
    { kind: 'table', table: jackTable(source, circuit, board) },
    { kind: 'text', text: `${trafficSentence(board, say)} ${faintSentence(board, say)}` },
    ...(triangle.rows.length > 1 ? [{ kind: 'table', table: triangle } as const] : []),
    { kind: 'box', title: 'Working it', sentences: WORKING[board.kind] },
  ]
}
