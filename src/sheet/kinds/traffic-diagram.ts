import { stationName } from '../../plan/plan'
import type { Trunk } from '../../report/trunks'
import { isUsable } from '../../report/trunks-of-net'
import { trunkSentence } from '../../words/switchboard-words'
import { tongueOf } from '../../words/tongue'
import { formatCount } from '../../words/units'
import type { Block } from '../layout/block'
import type { SheetRoom } from '../layout/paper-size'
import type { PaperSource } from '../paper-source'
import { MOST_BOXES, trafficDrawing } from '../scene/traffic-drawing'
import { trunksIn, trunkTable } from '../tables/trunk-tables'
import { type BoardOfNet, boardsIn } from './board-card'

/** Of two boards or more: boards as boxes, and between them how many circuits calls can go over; below, each trunk with its faintest call. */
export function trafficDiagram(source: PaperSource, room: SheetRoom): readonly Block[] {
  const boards = boardsIn(source)
  if (boards.length < 2) return []
  const say = tongueOf(source.plan, source.system)
  const trunks = trunksIn(source, boards)
  const table = trunkTable(source, trunks)
  const scene = trafficDrawing(
    boards.map((each) => boxOf(source, each)),
    linksOf(boards, trunks),
    room.widthMm,
  )
  return [
    ...(boards.length <= MOST_BOXES
      ? [{ kind: 'drawing', heightMm: scene.heightMm, drawing: { kind: 'scene', scene } } as const]
      : []),
    {
      kind: 'text',
      text:
        trunks.length === 0
          ? 'No line leads from one board to another.'
          : 'Between boxes: circuits over which both boards are rung and a call is heard, in the weather of the plan. Broken: none is usable.',
    },
    ...(table.rows.length > 0 ? [{ kind: 'table', table } as const] : []),
    ...trunks.map((trunk): Block => ({ kind: 'text', text: trunkSentence(trunk, say) })),
  ]
}

function boxOf({ plan }: PaperSource, { circuit, board }: BoardOfNet) {
  const telephones = board.jacks.reduce((sum, { stations }) => sum + stations.length, 0)
  const ports = board.spare === null ? '' : ` of ${board.jacks.length + board.spare}`
  const what = board.kind === 'board' ? 'board' : 'exchange'
  return {
    name: stationName(plan, board.station),
    words: [
      `${what} of ${plan.circuits.get(circuit.id)!.name}`,
      `${board.jacks.length}${ports} ${board.kind === 'board' ? 'jacks' : 'ports'} taken`,
      formatCount(telephones, 'telephone'),
      `${formatCount(board.callsAtOnce, 'call')} at once`,
    ],
    position: plan.stations.get(board.station as never)!.position,
  }
}

/** Trunks between the same two boards are one way, with their number. */
function linksOf(boards: readonly BoardOfNet[], trunks: readonly Trunk[]) {
  const placeOf = (id: string) => boards.findIndex(({ circuit }) => circuit.id === id)
  const ways = new Map<string, { from: number; to: number; all: Trunk[] }>()
  for (const trunk of trunks) {
    const [from, to] = trunk.circuits.map(placeOf).sort((a, b) => a - b) as [number, number]
    const way = ways.get(`${from} ${to}`) ?? { from, to, all: [] }
    way.all.push(trunk)
    ways.set(`${from} ${to}`, way)
  }
  return [...ways.values()].map(({ from, to, all }) => {
    const usable = all.filter(isUsable).length
    const words =
      usable === all.length
        ? formatCount(usable, 'circuit')
        : `${usable} of ${formatCount(all.length, 'circuit')}`
    return { from, to, words, isUsable: usable > 0 }
  })
}
