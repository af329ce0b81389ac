import { wrapText } from '../../figure/text-width'
import type { Drawing } from '../drawing/drawing'
import { leastWidthsEm, rowHeightMm, type Table, tableHeadHeightMm } from './table'

/** What a paper is made of, from the top down. */
export type Block =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'text'; readonly text: string; readonly isSmall?: boolean; readonly isBold?: boolean }
  | { readonly kind: 'drawing'; readonly heightMm: number; readonly drawing: Drawing | null }
  | { readonly kind: 'table'; readonly table: Table; readonly continued?: boolean }
  | {
      readonly kind: 'box'
      readonly title: string
      readonly sentences: readonly string[]
      readonly continued?: boolean
      readonly isSmall?: boolean
    }
  /** Columns beside each other, which no sheet parts; their widths are in proportion to their shares. */
  | {
      readonly kind: 'beside'
      readonly columns: readonly { readonly share: number; readonly blocks: readonly Block[] }[]
    }
  /** What follows begins a sheet of its own. */
  | { readonly kind: 'new-sheet' }

/** Running text is 10 pt; sheet.css holds the same figures. */
const EM_MM = (10 * 25.4) / 72
const LINE_MM = 4.6
/** A heading is 12 pt of a serif, which is a little wider. */
const HEADING_EM_MM = (13 * 25.4) / 72
/** Small text is 8 pt. */
const SMALL = { emMm: (8 * 25.4) / 72, lineMm: 3.5 }
/** Below a drawing, mm; drawing.css holds the same figure. */
const DRAWING_GAP_MM = 1
/** Between two columns, mm; sheet.css holds the same figure. */
export const GUTTER_MM = 5
const textHeightMm = (text: string, widthMm: number, isBold = false) =>
  wrapText(text, widthMm / EM_MM, isBold).length * LINE_MM

/** Widths of columns beside each other, mm. */
export function columnsMm(shares: readonly number[], widthMm: number): readonly number[] {
  const roomMm = widthMm - (shares.length - 1) * GUTTER_MM
  const all = shares.reduce((sum, share) => sum + share, 0)
  return shares.map((share) => (share / all) * roomMm)
}

export const beside = (columns: readonly (readonly [share: number, blocks: readonly Block[]])[]): Block => ({
  kind: 'beside',
  columns: columns.map(([share, blocks]) => ({ share, blocks })),
})

/** All blocks, in the place of columns what stands in them. */
export const blocksWithin = (blocks: readonly Block[]): readonly Block[] =>
  blocks.flatMap((block) =>
    block.kind === 'beside' ? block.columns.flatMap((column) => blocksWithin(column.blocks)) : [block],
  )

/** A block as the breaker sees it: a head that stands above every part, and items that may part company. */
export interface BlockHeights {
  readonly headMm: number
  /** Empty for what cannot be parted: its height is all head. */
  readonly itemsMm: readonly number[]
}

const remembered = new WeakMap<Block, { readonly widthMm: number; readonly heights: BlockHeights }>()

/** Heights of a block set `widthMm` wide, mm, with the gap below it. */
export function blockHeights(block: Block, widthMm: number): BlockHeights {
  const known = remembered.get(block)
  if (known?.widthMm === widthMm) return known.heights
  const heights = reckonedHeights(block, widthMm)
  remembered.set(block, { widthMm, heights })
  return heights
}

function reckonedHeights(block: Block, widthMm: number): BlockHeights {
  switch (block.kind) {
    case 'heading':
      return { headMm: 4 + 6 * wrapText(block.text, widthMm / HEADING_EM_MM, true).length, itemsMm: [] }
    case 'text':
      return {
        headMm: block.isSmall
          ? wrapText(block.text, widthMm / SMALL.emMm, block.isBold).length * SMALL.lineMm + 1.5
          : textHeightMm(block.text, widthMm, block.isBold) + 2,
        itemsMm: [],
      }
    case 'drawing':
      return { headMm: block.heightMm + DRAWING_GAP_MM, itemsMm: [] }
    case 'table':
      return {
        headMm: tableHeadHeightMm(block.table, widthMm) + 3,
        itemsMm: block.table.rows.map((row) => rowHeightMm(block.table, row, widthMm)),
      }
    case 'box':
      if (block.isSmall)
        return {
          headMm: 8.5,
          itemsMm: block.sentences.map(
            (sentence) => wrapText(sentence, (widthMm - 8) / SMALL.emMm).length * SMALL.lineMm + 0.3,
          ),
        }
      return {
        headMm: 13.7,
        itemsMm: block.sentences.map((sentence) => textHeightMm(sentence, widthMm - 12) + 1),
      }
    case 'beside': {
      const widths = columnsMm(
        block.columns.map(({ share }) => share),
        widthMm,
      )
      const heights = block.columns.map(({ blocks }, i) => heightOfMm(blocks, widths[i]!))
      return { headMm: Math.max(0, ...heights), itemsMm: [] }
    }
    case 'new-sheet':
      return { headMm: 0, itemsMm: [] }
  }
}

/** The part of a block with its items from `from` up to `to`; any part but the first is marked as continued. */
export function partOf(block: Block, from: number, to: number): Block {
  const mark = from > 0 ? { continued: true } : {}
  if (block.kind === 'table')
    return {
      ...block,
      ...mark,
      table: {
        ...block.table,
        rows: block.table.rows.slice(from, to),
        leastEm: leastWidthsEm(block.table),
      },
    }
  if (block.kind === 'box') return { ...block, ...mark, sentences: block.sentences.slice(from, to) }
  return block
}

/** Height of blocks one below the other, mm. */
export const heightOfMm = (blocks: readonly Block[], widthMm: number): number =>
  blocks.reduce((sum, block) => {
    const { headMm, itemsMm } = blockHeights(block, widthMm)
    return sum + headMm + itemsMm.reduce((rows, mm) => rows + mm, 0)
  }, 0)
