import type { Cell } from './posterior'

/** A piece of a line to be shaded, m of wire from the line's `from`. */
export interface Shaded {
  readonly line: string
  readonly fromM: number
  readonly toM: number
  readonly chance: number
  /** 0 is the darkest: as little of the wire as holds half of all chances; with 1 it is 80 of a hundred, with 2 95, with 3 99. */
  readonly tone: 0 | 1 | 2 | 3
}

/** What all pieces of a tone and of those darker hold together. */
const HELD = [0.5, 0.8, 0.95, 0.99]

/** How likely the fault is along every line, in four tones, as pieces that do not meet in the order of the lines; what holds the last hundredth is left out. */
export function shaded(cells: readonly Cell[]): readonly Shaded[] {
  const density = ({ fromM, toM, chance }: Cell) => chance / Math.max(toM - fromM, 1e-9)
  const tones = new Map<Cell, Shaded['tone']>()
  let held = 0
  for (const cell of cells.toSorted((a, b) => density(b) - density(a))) {
    const tone = HELD.findIndex((part) => held < part)
    if (tone === -1 || cell.chance === 0) break
    tones.set(cell, tone as Shaded['tone'])
    held += cell.chance
  }
  const pieces: Shaded[] = []
  for (const cell of cells) {
    const tone = tones.get(cell)
    if (tone === undefined) continue
    const { line, fromM, toM, chance } = cell
    const last = pieces.at(-1)
    if (last?.line === line && last.toM === fromM && last.tone === tone)
      pieces[pieces.length - 1] = { ...last, toM, chance: last.chance + chance }
    else pieces.push({ line, fromM, toM, chance, tone })
  }
  return pieces
}
