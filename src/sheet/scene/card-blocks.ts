import { type Block, blocksWithin } from '../layout/block'
import { columnWidthsMm, headsOf, showCell, type Table } from '../layout/table'
import { headingPart, type Part, rowPart, textPart, textParts } from './card-parts'

/** More columns than this are too narrow on a card. */
const MOST_COLUMNS = 8

/** Whether blocks can be set on a card: words and tables of few columns. */
export const fitCards = (blocks: readonly Block[]): boolean =>
  blocksWithin(blocks).every(
    (block) =>
      block.kind !== 'drawing' && (block.kind !== 'table' || block.table.columns.length <= MOST_COLUMNS),
  )

/** Blocks of words and tables as pieces of a card. */
export const partsOfBlocks = (blocks: readonly Block[], widthMm: number): readonly Part[] =>
  blocks.flatMap((block): readonly Part[] => {
    switch (block.kind) {
      case 'heading':
        return [headingPart(block.text, widthMm)]
      case 'text':
        return textParts(block.text, widthMm, block.isBold)
      case 'table':
        return tableParts(block.table, widthMm)
      case 'box':
        return [
          headingPart(block.title, widthMm),
          ...block.sentences.map((sentence, i) => textPart(`${i + 1}.\u00a0${sentence}`, widthMm)),
        ]
      default:
        return []
    }
  })

function tableParts(table: Table, widthMm: number): readonly Part[] {
  const widths = columnWidthsMm({ ...table, isTight: true, isLarge: false }, widthMm)
  return [
    ...(table.title && !table.isUntitled ? [headingPart(table.title, widthMm)] : []),
    rowPart(headsOf(table, widthMm), widths, { isHead: true }),
    ...table.rows.map((row) =>
      rowPart(
        table.columns.map((column, i) => showCell(row[i], column)),
        widths,
      ),
    ),
  ]
}
