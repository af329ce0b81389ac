import { type Tongue, tongueOf } from '../../words/tongue'
import { formatTempC } from '../../words/units'
import { type Block, heightOfMm } from '../layout/block'
import { breakIntoSheets } from '../layout/break-sheets'
import { inFewestSheets, type Letters, TIGHT, tableBlock, USUAL } from '../layout/fewest-sheets'
import type { SheetRoom } from '../layout/paper-size'
import type { PaperSource } from '../paper-source'
import { faultLog, faultTable, halvingTable, shortTable } from '../tables/fault-tables'

/** Signs of a fault at the crank and at the ear. US Army subcourses SS0437, p. 3, SS0440, p. 2-12, and SS0438, p. 71. */
const SIGNS = [
  'Begin with the telephone: take it off the line and try it by itself.',
  'The crank turns freely and nothing rings: an open; one that comes and goes is a bad splice.',
  'The crank goes stiff and in jerks: a short, most often at a tie or a terminal.',
  'Weak speech, hum and noise: a ground. Look for grounds before shorts, for both wires to ground look like a short.',
  'A third party is heard: a cross with another line.',
  'Halve: go to the middle tag, open there, ring both ways; the silent side holds the fault. Halve again, then walk the last piece. For a short the line must be cut at the place of the test. Never open a circuit in use.',
]

/** From a reading to a distance. Hawkins Electrical Guide, vol. 3 (1914), loop tests; Varley derived from the balance. */
const readings = ({ tempStep }: Tongue) => [
  'Short, meter at one end: distance = (reading − ohms of the short itself) × the figure for one ohm. From both ends the ohms of the short fall out: near part = (near reading − far reading + loop) / 2.',
  'Ground on one wire, Murray: join the good wire to the faulty one at the far end; part = arm at the faulty wire / both arms; distance along the faulty wire = part × 100 × the figure for 0.01.',
  'The same by Varley with equal arms, the rheostat in series with the faulty wire: distance = (loop − rheostat) × the figure for one ohm.',
  'Open, by capacitance with all bells off: distance = reading × the figure for one nanofarad, that of dry wire or of wet wire as it lies; from both ends the weather falls out: distance = wire of the line × near / (near + far).',
  `Distances are along the wire, slack included: look up the run on the ground on the line’s card. Take off the ohms of the test leads. Wire that is ${tempStep(10)} warmer reads about 4 % more.`,
]

/** A log of fewer rows is not worth its head. */
const LEAST_LOG_ROWS = 4

/** How to find a fault, and the figures for it, line by line; in small print where that saves sheets. */
export function faultCard(source: PaperSource, room: SheetRoom): readonly Block[] {
  const log = (rows: number): Block => ({ kind: 'table', table: faultLog(rows) })
  const withLog = (letters: Letters) => [...blocksIn(source, letters), log(LEAST_LOG_ROWS)]
  const card = inFewestSheets(withLog, [USUAL, TIGHT], room).slice(0, -1)
  return [...card, log(rowsLeft(card, room))]
}

function blocksIn(source: PaperSource, letters: Letters): readonly Block[] {
  const { plan, system } = source
  const isSmall = letters.isTight ?? false
  return [
    { kind: 'box', isSmall, title: 'What it sounds like, and where to look', sentences: SIGNS },
    {
      kind: 'box',
      isSmall,
      title: 'From a reading to a distance',
      sentences: readings(tongueOf(plan, system)),
    },
    {
      kind: 'text',
      isSmall,
      text: `Figures are for the wire at ${formatTempC(plan.wireTempC, system)}. Sets, supplies and branches are off the line while it is measured.`,
    },
    ...[halvingTable(source), faultTable(source), shortTable(source)].flatMap((table) =>
      tableBlock(table, letters),
    ),
  ]
}

/** Rows to write in that the last sheet still holds, or else a sheet of its own. */
function rowsLeft(card: readonly Block[], room: SheetRoom): number {
  const usedMm = heightOfMm(breakIntoSheets(card, room).at(-1) ?? [], room.widthMm)
  const rowsIn = (freeMm: number) => {
    const emptyMm = heightOfMm([{ kind: 'table', table: faultLog(0) }], room.widthMm)
    const rowMm = heightOfMm([{ kind: 'table', table: faultLog(1) }], room.widthMm) - emptyMm
    return Math.floor((freeMm - emptyMm) / rowMm)
  }
  const here = rowsIn(room.heightMm - usedMm)
  return here >= LEAST_LOG_ROWS ? here : rowsIn(room.heightMm)
}
