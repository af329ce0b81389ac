/** A sheet with all of its edges, mm. */
export interface PageSize {
  readonly widthMm: number
  readonly heightMm: number
}

/** A sheet of paper, upright. */
export interface PaperSize extends PageSize {
  readonly name: 'A4' | 'Letter' | 'A6'
}

/** ISO 216 A4 and A6, and ANSI A (8.5 × 11 in, exactly 215.9 × 279.4 mm). A6 takes only what is drawn to the sheet's edges: cards and labels. */
export const PAPER_SIZES: readonly PaperSize[] = [
  { name: 'A4', widthMm: 210, heightMm: 297 },
  { name: 'Letter', widthMm: 215.9, heightMm: 279.4 },
  { name: 'A6', widthMm: 105, heightMm: 148 },
]

/** White edge on all four sides; what office printers leave bare is at most 6 mm. sheet.css holds the same figure. */
export const MARGIN_MM = 12

/** Room that the head and the foot of a sheet take. sheet.css holds the same figures. */
const HEAD_MM = 20
const FOOT_MM = 12
/** Kept free, so that rounding in a printer driver pushes nothing over to another page. */
const SPARE_MM = 3

/** The room for blocks on one sheet, between its head and its foot. */
export interface SheetRoom {
  readonly widthMm: number
  readonly heightMm: number
  /** The sheet itself, for what is drawn to its edges. */
  readonly page: PaperSize
}

export const bodyOf = (size: PaperSize): SheetRoom => ({
  widthMm: size.widthMm - 2 * MARGIN_MM,
  heightMm: size.heightMm - 2 * MARGIN_MM - HEAD_MM - FOOT_MM - SPARE_MM,
  page: size,
})
