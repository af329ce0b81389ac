/**
 * How wide text is, reckoned without a screen, so that sheets break the same way in a test, a preview and a print.
 * The widths are those of DejaVu Sans, one of the widest of the common faces, in hundredths of an em:
 * text set in another face is narrower and leaves room.
 */
const WIDTHS: readonly (readonly [string, number])[] = [
  ['ijlIJ', 29],
  [' .,·', 32],
  [':;-', 36],
  ['ft()', 39],
  ['r', 41],
  ['–°', 50],
  ['scz', 55],
  ['kvxyFL', 59],
  ['aeno', 62],
  ['bdghpquEPSTY0123456789', 64],
  ['ABCKRVXZ', 70],
  ['DGHNUΩ', 77],
  ['OQ', 79],
  ['w→', 84],
  ['M', 86],
  ['m%WØ', 99],
]

const WIDTH_OF = new Map(
  WIDTHS.flatMap(([letters, width]) => [...letters].map((c) => [c, width / 100] as const)),
)
/** A letter not in the table: Latin with marks is no wider than 0.8 em, ideographs are 1 em. */
const widthOf = (c: string) => WIDTH_OF.get(c) ?? ((c.codePointAt(0) ?? 0) < 0x2e80 ? 0.8 : 1)
/** Bold letters are up to a seventh wider. */
const BOLD = 1.14

/** Width of one line of text, in ems of its size. */
export function textWidthEm(text: string, bold = false): number {
  let em = 0
  for (const c of text) em += widthOf(c)
  return bold ? em * BOLD : em
}

/** Text broken at spaces into lines of at most `widthEm`; a word longer than that is broken where it must be. */
export function wrapText(text: string, widthEm: number, bold = false): readonly string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(/\s+/)) {
    const longer = line ? `${line} ${word}` : word
    if (textWidthEm(longer, bold) <= widthEm) {
      line = longer
      continue
    }
    if (line) lines.push(line)
    line = word
    while (line.length > 1 && textWidthEm(line, bold) > widthEm) {
      let end = line.length - 1
      while (end > 1 && textWidthEm(line.slice(0, end), bold) > widthEm) end -= 1
      lines.push(line.slice(0, end))
      line = line.slice(end)
    }
  }
  return line || lines.length === 0 ? [...lines, line] : lines
}
