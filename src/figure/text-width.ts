/**
 * How wide text is, reckoned without a screen, so that sheets break the same way in a test, a preview and a print.
 * The widths are those of Arial, which Helvetica and Liberation Sans share (Adobe, Helvetica AFM 002.000), in thousandths of an em.
 */
const WIDTHS: readonly (readonly [string, number])[] = [
  ["ijl'’‘", 222],
  [' .,:;ftI/[]!|', 278],
  ['r-()·“”„', 333],
  ['*"', 389],
  ['°', 400],
  ['cksvxyzJ', 500],
  ['abdeghnopquL0123456789–_?$#', 556],
  ['+=<>×±', 584],
  ['FTZ', 611],
  ['ABEKPSVXYø&', 667],
  ['wCDHNRU', 722],
  ['Ω', 768],
  ['GOQØ☐', 778],
  ['mM', 833],
  ['%', 889],
  ['W', 944],
  ['→', 1000],
]
/** Reckoned in, so that no browser that rounds otherwise breaks a line where none is reckoned with. */
const SPARE = 1.015

const WIDTH_OF = new Map(
  WIDTHS.flatMap(([letters, width]) => [...letters].map((c) => [c, (width / 1000) * SPARE] as const)),
)
/** A letter not in the table: Latin with marks is no wider than 0.8 em, an ideograph is 1 em. */
const widthOf = (c: string) => WIDTH_OF.get(c) ?? ((c.codePointAt(0) ?? 0) < 0x2e80 ? 0.8 : 1)
/** Isolates take no room. */
for (const isolate of '\u2068\u2069') WIDTH_OF.set(isolate, 0)
/** Bold letters are about a tenth wider. */
const BOLD = 1.1

/** Width of one line of text, in ems of its size. */
export function textWidthEm(text: string, bold = false): number {
  let em = 0
  for (const c of text) em += widthOf(c)
  return bold ? em * BOLD : em
}

/** As much of a text as has room in `widthEm`, with dots where it was cut. */
export function cutToWidth(text: string, widthEm: number, bold = false): string {
  if (textWidthEm(text, bold) <= widthEm) return text
  const room = widthEm - textWidthEm('…', bold)
  let [kept, em] = ['', 0]
  for (const c of text) {
    em += textWidthEm(c, bold)
    if (em > room) break
    kept += c
  }
  // A name that stands isolated stays so.
  return `${kept.trimEnd()}…${text.endsWith('\u2069') ? '\u2069' : ''}`
}

/** Text broken at spaces into lines of at most `widthEm`; a word longer than that is broken where it must be. */
export function wrapText(text: string, widthEm: number, bold = false): readonly string[] {
  const lines: string[] = []
  let [line, em] = ['', 0]
  const spaceEm = textWidthEm(' ', bold)
  for (const word of text.split(/[ \t\r\n]+/)) {
    const wordEm = textWidthEm(word, bold)
    const longerEm = line ? em + spaceEm + wordEm : wordEm
    if (longerEm <= widthEm) {
      line = line ? `${line} ${word}` : word
      em = longerEm
      continue
    }
    if (line) lines.push(line)
    const parts = wordEm <= widthEm ? [word] : brokenWord(word, widthEm, bold)
    lines.push(...parts.slice(0, -1))
    line = parts.at(-1)!
    em = parts.length > 1 ? textWidthEm(line, bold) : wordEm
  }
  return line || lines.length === 0 ? [...lines, line] : lines
}

/** A word cut into pieces that each find room; a letter wider than that stands alone. */
function brokenWord(word: string, widthEm: number, bold: boolean): readonly string[] {
  const pieces = ['']
  let em = 0
  for (const c of word) {
    const more = bold ? widthOf(c) * BOLD : widthOf(c)
    if (em + more > widthEm && pieces.at(-1) !== '') {
      pieces.push('')
      em = 0
    }
    pieces[pieces.length - 1] += c
    em += more
  }
  return pieces
}
