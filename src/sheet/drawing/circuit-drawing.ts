import type { Box, Point } from '../../figure/geometry'
import { type StationSign, stationSigns } from '../../figure/station-signs'
import { wrapText } from '../../figure/text-width'
import type { StationId } from '../../plan/id'
import { pairEndsAt } from '../../plan/pair-ends'
import { pairsOf } from '../../plan/pair-of'
import type { Circuit, Line } from '../../plan/plan'
import { stationName } from '../../plan/plan'
import { nameIn } from '../../words/tongue'
import { formatOhms } from '../../words/units'
import { lineLossDb } from '../line-loss'
import { lineNumber } from '../line-marks'
import type { PaperSource } from '../paper-source'
import { type Link, layOutTree, type PlacedNode, type TreePiece } from './tree-layout'

/** One station of a circuit, as a box of words. */
export interface CircuitBox {
  readonly box: Box
  readonly name: readonly string[]
  readonly lines: readonly string[]
  readonly hasSet: boolean
  readonly sign: StationSign
}

/** One line of a circuit: out of its parent, down, and into its child; its words stand beside it. */
export interface CircuitWire {
  readonly points: readonly Point[]
  readonly above: readonly string[]
  readonly below: readonly string[]
}

/** One drawing of a circuit, mm. */
export interface CircuitDrawing {
  readonly widthMm: number
  readonly heightMm: number
  readonly boxes: readonly CircuitBox[]
  readonly wires: readonly CircuitWire[]
}

const COLUMNS = 4
const BOX_MM = 34
/** Name and words in a box, mm an em and mm a line; sheet.css holds the same sizes. */
const NAME_EM_MM = 3.4
const WORD_EM_MM = 2.9
const NAME_LINE_MM = 4.2
const WORD_LINE_MM = 3.6
const PAD_MM = 1.4
const ROW_GAP_MM = 4
/** So high that the words at a line do not meet those of the next one. */
const LEAST_ROW_MM = 13.8
/** What rides on pairs has a word more above its lines, which its middle keeps clear of. */
const RIDER_ROW_MM = 20.4
/** The terminal block at the left of a box takes this off the width of its words. */
const SYMBOL_MM = 7.6

const pairWords = ({ over }: Circuit, pairs: readonly number[]): readonly string[] => [
  ...(over ? [over] : []),
  `${pairs.length > 1 ? 'pairs' : 'pair'} ${pairs.join('+')}`,
]

/** What rides on pairs has both wires of each side by side: half of a pair's loop, a quarter for a simplex, without coils and electrodes. */
const SHARE_OF_LOOP = { pair: 1, phantom: 1 / 2, simplex: 1 / 4 } as const

function wordsOn(
  source: PaperSource,
  circuit: Circuit,
  id: string,
): { words: string[]; hasSet: boolean; sign: StationSign } {
  const { plan, catalog } = source
  const signs = stationSigns(new Map([[circuit.id, circuit]]), (type) => catalog.supplies.get(type)?.kind)
  const set = circuit.sets.get(id as StationId)
  const supply = circuit.supply?.at === id ? circuit.supply.type : undefined
  return {
    words: [
      set === undefined ? 'joint' : nameIn(plan, set),
      ...(supply === undefined ? [] : [`supply: ${nameIn(plan, supply)}`]),
    ],
    hasSet: set !== undefined,
    sign: signs.get(id as StationId) ?? 'telephone',
  }
}

/**
 * A circuit drawn as a tree from its supply, or from its first set; over several drawings where one sheet cannot hold it.
 *
 * @param room width of the sheet and the most height for one drawing, mm
 * @param columns stations that stand beside each other
 */
export function drawCircuit(
  source: PaperSource,
  circuit: Circuit,
  room: { readonly widthMm: number; readonly heightMm: number },
  columns = COLUMNS,
): readonly CircuitDrawing[] {
  const { plan, report } = source
  const measured = new Map(report.lines.map((line) => [line.id, line]))
  const lines = circuit.lines.flatMap((id) => plan.lines.get(id) ?? [])
  const first = lines[0]
  if (!first) return []
  const nameOf = (id: string) => stationName(plan, id)
  const root = circuit.supply?.at ?? [...circuit.sets.keys()][0] ?? first.from
  const postsAt = (station: string, line: Line) =>
    pairEndsAt(plan, station as StationId)
      .find((end) => end.line === line.id && (end.circuit === circuit.id || end.rider === circuit.id))
      ?.posts.join('·')
  /** What stands at a line, read from one of its ends to the other. */
  const wordsOf = (line: Line, from: string = line.from) => {
    const posts = [from, from === line.from ? line.to : line.from].map((end) => postsAt(end, line))
    const found = measured.get(line.id)!
    // The loss of a line by itself is that of a pair.
    const loss = circuit.over ? undefined : lineLossDb(source, line, found)
    const pair = line.return === 'earth' ? ['by earth'] : pairWords(circuit, pairsOf(plan, circuit, line))
    return {
      above: [`line ${lineNumber(source, line.id)}`, ...pair],
      below: [
        formatOhms(found.loopOhms * SHARE_OF_LOOP[circuit.over ?? 'pair']),
        loss === undefined ? '' : `${loss.toFixed(1)} dB`,
        posts.every(Boolean) ? posts.join(' – ') : '',
      ].filter(Boolean),
    }
  }
  const byId = new Map<string, Line>(lines.map((line) => [line.id, line]))
  const links = lines.map((line): Link => ({ id: line.id, a: line.from, b: line.to }))
  // Rows of three words at the least. Where long names make them taller a drawing has fewer, until a sheet holds it.
  const leastRowMm = NAME_LINE_MM + WORD_LINE_MM + 2 * PAD_MM + ROW_GAP_MM
  const pitchMm = (room.widthMm - BOX_MM) / (columns - 1)

  for (let rows = Math.floor(room.heightMm / (leastRowMm + 2 * WORD_LINE_MM)); ; rows--) {
    const { pieces, closing } = layOutTree(root, links, { columns, rows })
    const drawings = pieces.map((piece) => drawingOf(piece, closing))
    if (rows <= 1 || drawings.every(({ heightMm }) => heightMm <= room.heightMm)) return drawings
  }

  function drawingOf(piece: TreePiece, closing: readonly Link[]): CircuitDrawing {
    const boxes = piece.nodes.map((node) => boxOf(node, closing))
    const rowsMm = Array.from({ length: piece.rows }, (_, row) =>
      Math.max(
        ...boxes.filter((one) => one.node.row === row).map(({ heightMm }) => heightMm),
        circuit.over ? RIDER_ROW_MM : LEAST_ROW_MM,
      ),
    )
    const topOf = (row: number) =>
      rowsMm.slice(0, row).reduce((sum, height) => sum + height + ROW_GAP_MM, 0) + 0.5
    const middleOf = ({ column, row }: PlacedNode): Point => [
      column * pitchMm + BOX_MM / 2,
      topOf(row) + rowsMm[row]! / 2,
    ]
    return {
      widthMm: room.widthMm,
      heightMm: topOf(piece.rows),
      boxes: boxes.map(({ node, heightMm, name, words, hasSet, sign }) => {
        const [x, y] = middleOf(node)
        return {
          box: {
            left: x - BOX_MM / 2,
            right: x + BOX_MM / 2,
            top: y - heightMm / 2,
            bottom: y + heightMm / 2,
          },
          name,
          lines: words,
          hasSet,
          sign,
        }
      }),
      wires: piece.links.map(({ link, parent, child }) => {
        const from = middleOf(parent)
        const to = middleOf(child)
        const start = from[0] + BOX_MM / 2
        const end = to[0] - BOX_MM / 2
        const trunk = start + 2.5
        return {
          points: [
            [start, from[1]],
            [trunk, from[1]],
            [trunk, to[1]],
            [end, to[1]],
          ],
          ...wordsOf(byId.get(link.id)!, parent.id),
        }
      }),
    }
  }

  function boxOf(node: PlacedNode, closing: readonly Link[]) {
    const { words, hasSet, sign } = wordsOn(source, circuit, node.id)
    const notes = [
      ...(node.comesFrom ? [`goes on from ${node.comesFrom}`] : words),
      ...closing
        .filter(({ a, b }) => a === node.id || b === node.id)
        .map((link) => {
          const { above, below } = wordsOf(byId.get(link.id)!)
          const other = nameOf(link.a === node.id ? link.b : link.a)
          return `ring: ${above.join(', ')} to ${other}, ${below.join(', ')}`
        }),
      ...(node.goesOn ? [`more lines: see ${node.goesOn}`] : []),
    ]
    const roomMm = BOX_MM - SYMBOL_MM - PAD_MM
    const name = wrapText(nameOf(node.id), roomMm / NAME_EM_MM, true)
    const wrapped = notes.flatMap((note) => wrapText(note, roomMm / WORD_EM_MM))
    const heightMm = name.length * NAME_LINE_MM + wrapped.length * WORD_LINE_MM + 2 * PAD_MM
    return { node, heightMm, name, words: wrapped, hasSet, sign }
  }
}
