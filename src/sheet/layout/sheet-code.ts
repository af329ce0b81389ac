import type { Picture } from '../../figure/code-picture'
import { type Block, GUTTER_MM } from './block'
import type { SheetRoom } from './paper-size'

/** A code for a camera at the upper right corner of a paper's first sheet. */
export interface SheetCode {
  readonly picture: Picture
  /** What it does, for who hears the page read out. */
  readonly label: string
}

/** sheet.css holds the same figures. */
export const CODE_MM = 38
/** From the top of a sheet to what stands below a head of three lines. */
const HEAD_MM = 20

/** What begins below the head beside the lower part of the code. */
export const besideCode = (blocks: readonly Block[], { widthMm }: Pick<SheetRoom, 'widthMm'>): Block => ({
  kind: 'beside',
  columns: [
    { share: widthMm - GUTTER_MM - CODE_MM, blocks },
    { share: CODE_MM, blocks: [{ kind: 'drawing', heightMm: CODE_MM - HEAD_MM, drawing: null }] },
  ],
})
