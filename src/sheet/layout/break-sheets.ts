import { type Block, blockHeights, heightOfMm, partOf } from './block'
import type { SheetRoom } from './paper-size'

/** Rows that are no higher together are not parted, as long as a sheet can hold them, mm. */
const WHOLE_MM = 60

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
 * Blocks dealt out to sheets, in order. What is over for the last sheet is a third of it at the least, as long as the sheets before it can
 * spare that.
 *
 * @param room the body of a sheet, mm
 */
export function breakIntoSheets(blocks: readonly Block[], room: SheetRoom): readonly (readonly Block[])[] {
  const full = dealOut(blocks, room)
  const isSpare = (sheets: readonly (readonly Block[])[]) =>
    sheets.length > 1 && heightOfMm(sheets.at(-1)!, room.widthMm) < LEAST_SHARE * room.heightMm
  if (!isSpare(full)) return full
  for (const filling of FILLINGS) {
    const sheets = dealOut(blocks, { ...room, heightMm: room.heightMm * filling })
    if (sheets.length > full.length) break
    if (!isSpare(sheets)) return sheets
  }
  return full
}

/**
 * Blocks dealt out to sheets, in order. Tables and boxes part between rows and sentences, never within one; a heading
 * stays with what it heads. What is too tall for any sheet stands alone on one, and overflows it rather than be cut.
 */
function dealOut(blocks: readonly Block[], room: SheetRoom): readonly (readonly Block[])[] {
  const sheets: Block[][] = [[]]
  let freeMm = room.heightMm
  const turn = () => {
    if (sheets.at(-1)!.length > 0) sheets.push([])
    freeMm = room.heightMm
  }
  const put = (block: Block, heightMm: number) => {
    sheets.at(-1)!.push(block)
    freeMm -= heightMm
  }

  for (const [i, block] of blocks.entries()) {
    if (block.kind === 'new-sheet') {
      turn()
      continue
    }
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
