import { cautionText } from '../../words/caution-words'
import { tongueOf } from '../../words/tongue'
import { formatTempC } from '../../words/units'
import { cautionsInShort } from '../glance-cautions'
import { gridNote } from '../grid-note'
import { type Block, columnsMm, heightOfMm } from '../layout/block'
import { CLOSE, LARGE, type Letters, TIGHT, tableBlock, USUAL } from '../layout/fewest-sheets'
import type { SheetRoom } from '../layout/paper-size'
import { besideCode, type SheetCode } from '../layout/sheet-code'
import { inColumns } from '../layout/table-columns'
import type { PaperSource } from '../paper-source'
import { netDrawing, strokesDrawing } from '../scene/net-drawing'
import { circuitKey, lineKey, stationKey } from '../tables/glance-tables'
import { codeOfPlan } from './paper-code'

/** Heights of the drawing, the best first, mm. */
const HEIGHTS_MM = [150, 140, 130, 120, 110, 100, 90, 80]
/** Kept free below a drawing, mm. */
const GAP_MM = 1
/** Beside tables the drawing may be lower. */
const LOWEST_MM = 54
/** How stations and lines share the sheet beside each other: a line has more to say. */
const SHARES = [40, 60] as const
/** Beside the circuits the drawing has a little more than half. */
const DRAWING_SHARES = [52, 48] as const

const ORDER = 'Laying begins at the first supply; each line starts from wire that lies.'

/** The whole net on one sheet: in large print where that holds it, else with its tables beside each other, at last in small print. */
export function netAtAGlance(
  source: PaperSource,
  room: SheetRoom,
): { readonly blocks: readonly Block[]; readonly code?: SheetCode } {
  if (source.plan.stations.size === 0) return { blocks: [] }
  const code = codeOfPlan(source)
  if (!code) return { blocks: inRoom(source, room) }
  const top = besideCode([{ kind: 'text', text: code.words }], room)
  const heightMm = room.heightMm - heightOfMm([top], room.widthMm)
  return { blocks: [top, ...inRoom(source, { ...room, heightMm })], code }
}

const inRoom = (source: PaperSource, room: SheetRoom): readonly Block[] =>
  below(source, room, LARGE) ??
  below(source, room, USUAL) ??
  beside(source, room, USUAL) ??
  beside(source, room, TIGHT) ??
  beside(source, room, CLOSE) ??
  folded(source, room)

function strokesBlock({ plan }: PaperSource, widthMm: number): readonly Block[] {
  if (plan.circuits.size === 0) return []
  const scene = strokesDrawing(plan.circuits.size, widthMm)
  return [{ kind: 'drawing', heightMm: scene.heightMm, drawing: { kind: 'scene', scene } }]
}

function foot(source: PaperSource, { isTight = false, isClose = false }: Letters): readonly Block[] {
  const { plan, report, system } = source
  const say = tongueOf(plan, system)
  const sentences = isClose
    ? cautionsInShort(source)
    : [...new Set(report.cautions.map((caution) => cautionText(caution, say)))]
  const told = [
    `Figures for ${plan.weather} weather, wire at ${formatTempC(plan.wireTempC, system)}${isClose ? '; at worst: in that weather, supply and bells weak.' : `. ${ORDER}`}`,
    gridNote([...plan.stations.values()]),
  ]
  return [
    ...(sentences.length > 0
      ? [{ kind: 'box', title: 'Cautions', sentences, isSmall: isTight } as const]
      : []),
    { kind: 'text', isSmall: isTight, text: told.filter(Boolean).join(' ') },
  ]
}

/** The drawing as high as it may be, and below it what it had no room to number. */
function drawn(source: PaperSource, widthMm: number, heightMm: number, isSmall = false): readonly Block[] {
  const { scene, unplaced } = netDrawing(source, widthMm, heightMm)
  return [
    { kind: 'drawing', heightMm, drawing: { kind: 'scene', scene } },
    ...(unplaced.length > 0
      ? [
          {
            kind: 'text',
            isSmall,
            text: `Not numbered on the map for want of room: ${unplaced.join(', ')}.`,
          } as const,
        ]
      : []),
  ]
}

/** Everything one below the other; undefined where one sheet does not hold it. */
function below(source: PaperSource, room: SheetRoom, letters: Letters): readonly Block[] | undefined {
  const rest = [
    ...strokesBlock(source, room.widthMm),
    ...tableBlock(circuitKey(source), letters),
    ...tableBlock(stationKey(source), letters),
    ...tableBlock(lineKey(source), letters),
    ...foot(source, letters),
  ]
  const leftMm = room.heightMm - heightOfMm(rest, room.widthMm)
  const heightMm = HEIGHTS_MM.find((each) => each + GAP_MM <= leftMm)
  if (heightMm === undefined) return undefined
  return onOne([...drawn(source, room.widthMm, heightMm), ...rest], room)
}

const onOne = (blocks: readonly Block[], room: SheetRoom): readonly Block[] | undefined =>
  heightOfMm(blocks, room.widthMm) <= room.heightMm ? blocks : undefined

/** The drawing beside its circuits, and the stations beside the lines; undefined where one sheet does not hold it. */
function beside(source: PaperSource, room: SheetRoom, letters: Letters): readonly Block[] | undefined {
  const [drawingMm, circuitsMm] = columnsMm(DRAWING_SHARES, room.widthMm) as [number, number]
  const circuits = [
    ...strokesBlock(source, circuitsMm),
    ...tableBlock(circuitKey(source, 'beside', letters.isClose), letters),
  ]
  const top = (heightMm: number): Block => ({
    kind: 'beside',
    columns: [
      { share: DRAWING_SHARES[0], blocks: drawn(source, drawingMm, heightMm, letters.isTight) },
      { share: DRAWING_SHARES[1], blocks: circuits },
    ],
  })
  const end = foot(source, letters)
  const keys = keysBeside(source, room, letters)
  const leftMm = room.heightMm - heightOfMm([...keys, ...end], room.widthMm)
  if (leftMm < Math.max(LOWEST_MM + GAP_MM, heightOfMm(circuits, circuitsMm))) return undefined
  const numbersMm = letters.isTight ? 9 : 0
  const heightMm = Math.min(drawingMm, Math.max(LOWEST_MM, leftMm - GAP_MM - numbersMm))
  return onOne([top(heightMm), ...keys, ...end], room)
}

const keysBeside = (source: PaperSource, room: SheetRoom, letters: Letters): readonly Block[] => {
  const [stations, lines] = [stationKey(source), lineKey(source)]
  return letters.isClose
    ? [...inColumns(stations, room, letters), ...inColumns(lines, room, letters)]
    : [
        {
          kind: 'beside',
          columns: [stations, lines].map((table, i) => ({
            share: SHARES[i]!,
            blocks: tableBlock(table, letters),
          })),
        },
      ]
}

/** What one sheet does not hold: the drawing over its whole width with circuits and cautions, then stations and lines in columns. */
function folded(source: PaperSource, room: SheetRoom): readonly Block[] {
  const rest = [
    ...strokesBlock(source, room.widthMm),
    ...tableBlock(circuitKey(source, undefined, true), CLOSE),
    ...foot(source, CLOSE),
  ]
  const leftMm = room.heightMm - heightOfMm(rest, room.widthMm)
  const heightMm = Math.min(HEIGHTS_MM[0]!, Math.max(LOWEST_MM, leftMm - 16))
  return [...drawn(source, room.widthMm, heightMm, true), ...rest, ...keysBeside(source, room, CLOSE)]
}
