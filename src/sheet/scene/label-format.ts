import { type UnitSystem, unitOf } from '../../words/units'

/** A sheet of labels, or a plain sheet that is cut into labels: mm. */
export interface LabelFormat {
  /** What a choice is kept by: how many, and their measures. */
  readonly name: string
  readonly columns: number
  readonly rows: number
  readonly widthMm: number
  readonly heightMm: number
  /** From the left edge of one label to that of the next, and from top to top. */
  readonly pitchMm: readonly [across: number, down: number]
  /** Upper left corner of the first label. */
  readonly startMm: readonly [left: number, top: number]
  /** A plain sheet has marks to cut it by; ready-made labels have none. */
  readonly isCut: boolean
}

interface Wanted {
  readonly columns: number
  readonly rows: number
  readonly widthMm: number
  readonly heightMm: number
  readonly gapMm?: readonly [number, number]
  readonly isCut?: true
}

type Sheet = { readonly widthMm: number; readonly heightMm: number }

/** Labels in the middle of a sheet, as every common sheet of labels has them. */
const onSheet =
  (sheet: Sheet) =>
  ({ columns, rows, widthMm, heightMm, gapMm: [acrossMm, downMm] = [0, 0], isCut }: Wanted): LabelFormat => ({
    name: `${columns}×${rows} ${widthMm}×${heightMm}`,
    columns,
    rows,
    widthMm,
    heightMm,
    pitchMm: [widthMm + acrossMm, heightMm + downMm],
    startMm: [
      (sheet.widthMm - columns * widthMm - (columns - 1) * acrossMm) / 2,
      (sheet.heightMm - rows * heightMm - (rows - 1) * downMm) / 2,
    ],
    isCut: isCut ?? false,
  })

const A4 = onSheet({ widthMm: 210, heightMm: 297 })
const LETTER = onSheet({ widthMm: 215.9, heightMm: 279.4 })
const A6 = onSheet({ widthMm: 105, heightMm: 148 })
const INCH_MM = 25.4

/**
 * Common sheets of labels, by their measures alone; the first of each size is plain paper or film that is cut.
 * From memory: what is sold agrees with these measures to half a millimetre, and a print on plain paper held behind the labels shows it.
 */
export const LABEL_FORMATS: Readonly<Record<'A4' | 'Letter' | 'A6', readonly LabelFormat[]>> = {
  A4: [
    A4({ columns: 3, rows: 6, widthMm: 62, heightMm: 42, gapMm: [4, 4], isCut: true }),
    A4({ columns: 3, rows: 7, widthMm: 63.5, heightMm: 38.1, gapMm: [2.5, 0] }),
    A4({ columns: 2, rows: 7, widthMm: 99.1, heightMm: 38.1, gapMm: [2.5, 0] }),
    A4({ columns: 3, rows: 8, widthMm: 70, heightMm: 37 }),
    A4({ columns: 2, rows: 4, widthMm: 99.1, heightMm: 67.7, gapMm: [2.5, 0] }),
  ],
  Letter: [
    LETTER({ columns: 3, rows: 5, widthMm: 62, heightMm: 46, gapMm: [4, 4], isCut: true }),
    LETTER({
      columns: 3,
      rows: 10,
      widthMm: 2.625 * INCH_MM,
      heightMm: INCH_MM,
      gapMm: [0.125 * INCH_MM, 0],
    }),
    LETTER({
      columns: 2,
      rows: 5,
      widthMm: 4 * INCH_MM,
      heightMm: 2 * INCH_MM,
      gapMm: [0.1875 * INCH_MM, 0],
    }),
  ],
  A6: [A6({ columns: 1, rows: 3, widthMm: 90, heightMm: 42, gapMm: [0, 4], isCut: true })],
}

/** A format as a person reads it: `21 of 63.5 × 38.1 mm`, `30 of 2.63 × 1 in`. */
export function labelWords(
  { columns, rows, widthMm, heightMm, isCut }: LabelFormat,
  system: UnitSystem,
): string {
  const { sign, fromSi } = unitOf('diameterMm', system)
  const measure = (mm: number) => String(Number(fromSi(mm).toFixed(system === 'us' ? 2 : 1)))
  const size = `${measure(widthMm)} × ${measure(heightMm)} ${sign}`
  return `${columns * rows} of ${size}${isCut ? ', plain sheet to cut' : ''}`
}
