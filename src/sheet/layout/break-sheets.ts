import { type Block, blockHeights, heightOfMm, partOf } from './block'
import type { SheetRoom } from './paper-size'

/** Rows that are no higher together are not parted, as long as a sheet can hold them, mm. */
const WHOLE_MM = 60

const ROUNDING_MM = 1e-9

const sumMm = (itemsMm: readonly number[]) => itemsMm.reduce((sum, mm) => sum + mm, 0)

/** What of a run of rows must begin together: all of a low one, else two, for one alone at the foot of a sheet looks lost. */
function firstItemsMm(itemsMm: readonly number[]): number {
  const allMm = sumMm(itemsMm)
  return allMm <= WHOLE_MM ? allMm : sumMm(itemsMm.slice(0, 2))
}

/** Height of the least that must stand together from block `i` on: headings, and the first part of what they head. */
function leastMm(blocks: readonly Block[], i: number, widthMm: number): number {
  const block = blocks[i]
  if (!block) return 0
  const { headMm, itemsMm } = blockHeights(block, widthMm)
  const leads = block.kind === 'heading' || (block.kind === 'text' && blocks[i + 1]?.kind === 'table')
  if (leads) return headMm + leastMm(blocks, i + 1, widthMm)
  return headMm + firstItemsMm(itemsMm)
}

/** A sheet with less on it than this is a waste, unless it is the only one. */
const LEAST_SHARE = 1 / 3
/** By how much less than full the sheets may be made, so that the last one has its share. */
const FILLINGS = Array.from({ length: 30 }, (_, i) => 0.98 - 0.02 * i)

/**
 * Blocks dealt out to sheets, in order. What is over for the last sheet, or for the last one before a sheet is begun on purpose, is a third of it at
 * the least, as long as the sheets before it can spare that.
 *
 * @param room the body of a sheet, mm
 */
export const breakIntoSheets = (blocks: readonly Block[], room: SheetRoom): readonly (readonly Block[])[] =>
  runsOf(blocks).flatMap((run) => dealOutEvenly(run, room))

/** What stands between one sheet that is begun on purpose and the next. */
function runsOf(blocks: readonly Block[]): readonly (readonly Block[])[] {
  const at = blocks.findIndex(({ kind }) => kind === 'new-sheet')
  return at < 0 ? [blocks] : [blocks.slice(0, at), ...runsOf(blocks.slice(at + 1))]
}

function dealOutEvenly(blocks: readonly Block[], room: SheetRoom): readonly (readonly Block[])[] {
  const full = dealOut(blocks, room)
  const isSpare = (sheets: readonly (readonly Block[])[]) =>
    sheets.length > 1 && heightOfMm(sheets.at(-1)!, room.widthMm) < LEAST_SHARE * room.heightMm
  if (!isSpare(full)) return full
  const lessFull = (some: readonly Block[], count: number) => {
    for (const filling of FILLINGS) {
      const sheets = dealOut(some, { ...room, heightMm: room.heightMm * filling })
      if (sheets.length > count) return undefined
      if (!isSpare(sheets)) return sheets
    }
    return undefined
  }
  const all = lessFull(blocks, full.length)
  if (all) return all
  // Where that takes a sheet more, the last two share what is on them.
  const lastTwo = lessFull(joined(full.slice(-2)), 2)
  return lastTwo ? [...full.slice(0, -2), ...lastTwo] : full
}

/** Blocks of two sheets, with what was parted between them whole again. */
function joined([before = [], after = []]: readonly (readonly Block[])[]): readonly Block[] {
  const [a, b] = [before.at(-1), after[0]]
  if (a?.kind === 'table' && b?.kind === 'table' && b.continued) {
    const whole: Block = { ...a, table: { ...a.table, rows: [...a.table.rows, ...b.table.rows] } }
    return [...before.slice(0, -1), whole, ...after.slice(1)]
  }
  if (a?.kind === 'box' && b?.kind === 'box' && b.continued)
    return [...before.slice(0, -1), { ...a, sentences: [...a.sentences, ...b.sentences] }, ...after.slice(1)]
  return [...before, ...after]
}

/**
 * Blocks dealt out to sheets, in order. Tables and boxes part between rows and sentences, never within one; a heading
 * stays with what it heads. What is too tall for any sheet stands alone on one, and overflows it rather than be cut.
 */
function dealOut(blocks: readonly Block[], room: SheetRoom): readonly (readonly Block[])[] {
  const sheets: Block[][] = [[]]
  // What was made to fill a sheet exactly must not be parted for a rounding.
  const roomMm = room.heightMm + ROUNDING_MM
  let freeMm = roomMm
  const turn = () => {
    if (sheets.at(-1)!.length > 0) sheets.push([])
    freeMm = roomMm
  }
  const put = (block: Block, heightMm: number) => {
    sheets.at(-1)!.push(block)
    freeMm -= heightMm
  }

  for (const [i, block] of blocks.entries()) {
    const { headMm, itemsMm } = blockHeights(block, room.widthMm)
    if (itemsMm.length === 0) {
      if (leastMm(blocks, i, room.widthMm) > freeMm) turn()
      put(block, headMm)
      continue
    }
    let from = 0
    while (from < itemsMm.length) {
      if (headMm + firstItemsMm(itemsMm.slice(from)) > freeMm) turn()
      let to = from + 1
      let heightMm = headMm + itemsMm[from]!
      while (to < itemsMm.length && heightMm + itemsMm[to]! <= freeMm) {
        heightMm += itemsMm[to]!
        to += 1
      }
      // One row alone at the top of a sheet looks lost: it takes the row above with it.
      if (to === itemsMm.length - 1 && to - from > 1) {
        to -= 1
        heightMm -= itemsMm[to]!
      }
      put(partOf(block, from, to), heightMm)
      if (to < itemsMm.length) turn()
      from = to
    }
  }
  return sheets.filter((sheet) => sheet.length > 0)
}
