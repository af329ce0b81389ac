/**
 * How wide text is, reckoned without a screen, so that sheets break the same way in a test, a preview and a print.
 * The widths are those of Arial, which Helvetica and Liberation Sans share, in hundredths of an em, and a little more.
 */
const WIDTHS: readonly (readonly [string, number])[] = [
  ['ijl', 24],
  [' .,·:;ftI/', 30],
  ['r-()°', 35],
  ['*"', 42],
  ['cksvxyzJ', 52],
  ['abdeghnopquL0123456789–_', 58],
  ['FTZ', 63],
  ['ABEKPSVXYø', 69],
  ['wCDHNRUΩ', 75],
  ['GOQØ☐', 81],
  ['mM', 86],
  ['%', 92],
  ['W→', 100],
]

const WIDTH_OF = new Map(
  WIDTHS.flatMap(([letters, width]) => [...letters].map((c) => [c, width / 100] as const)),
)
/** A letter not in the table: Latin with marks is no wider than 0.8 em, an ideograph is 1 em. */
const widthOf = (c: string) => WIDTH_OF.get(c) ?? ((c.codePointAt(0) ?? 0) < 0x2e80 ? 0.8 : 1)
/** Bold letters are about a tenth wider. */
const BOLD = 1.1

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
  for (const word of text.split(/[ \t\r\n]+/)) {
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
