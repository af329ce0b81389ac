import type { Cell } from './posterior'

/** A stretch of a line's wire, m from its `from`, and the chance that the fault lies there. */
export interface LikelyStretch {
  readonly line: string
  readonly fromM: number
  readonly toM: number
  readonly chance: number
}

/** What a band is to hold. */
export const BAND = 0.95

const byLine = (cells: readonly Cell[]): ReadonlyMap<string, readonly Cell[]> => {
  const lines = new Map<string, Cell[]>()
  for (const cell of cells) {
    const before = lines.get(cell.line)
    if (before) before.push(cell)
    else lines.set(cell.line, [cell])
  }
  return lines
}

/** The narrowest stretch of one line that holds 95 of a hundred; null where no line holds as much. */
export function narrowestBand(cells: readonly Cell[]): LikelyStretch | null {
  let best: LikelyStretch | null = null
  for (const [line, own] of byLine(cells)) {
    const chance = own.reduce((sum, each) => sum + each.chance, 0)
    if (chance < BAND) continue
    for (const band of [...forward(own), ...backward(own)])
      if (!best || band.toM - band.fromM < best.toM - best.fromM) best = { line, chance: BAND, ...band }
  }
  return best
}

type Span = Pick<LikelyStretch, 'fromM' | 'toM'>

/** From the start of each cell on, as far as it takes. */
function forward(cells: readonly Cell[]): readonly Span[] {
  const spans: Span[] = []
  let [to, held] = [0, 0]
  for (const [from, first] of cells.entries()) {
    while (to < cells.length && held + cells[to]!.chance < BAND) held += cells[to++]!.chance
    const last = cells[to]
    if (!last) break
    const part = (BAND - held) / last.chance
    spans.push({ fromM: first.fromM, toM: last.fromM + part * (last.toM - last.fromM) })
    if (to === from) to++
    else held -= first.chance
  }
  return spans
}

const backward = (cells: readonly Cell[]): readonly Span[] =>
  forward(cells.toReversed().map((cell) => ({ ...cell, fromM: -cell.toM, toM: -cell.fromM }))).map(
    ({ fromM, toM }) => ({ fromM: -toM, toM: -fromM }),
  )

/** What the places that are listed hold together, and the least that one of them is listed for. */
const LISTED = 0.99
const LEAST_LISTED = 0.003

/** The likeliest places as stretches that do not meet, the likeliest first: as short together as 99 of a hundred allow. */
export function likelyPlaces(cells: readonly Cell[]): readonly LikelyStretch[] {
  const density = ({ fromM, toM, chance }: Cell) => chance / Math.max(toM - fromM, 1e-9)
  const kept = new Set<Cell>()
  let held = 0
  for (const cell of cells.toSorted((a, b) => density(b) - density(a))) {
    if (held >= LISTED) break
    kept.add(cell)
    held += cell.chance
  }
  const places: LikelyStretch[] = []
  for (const [line, own] of byLine(cells)) {
    // A gap so short is no place to leave out.
    const gapM = 0.02 * own.at(-1)!.toM
    let open: LikelyStretch | undefined
    let skipped = 0
    for (const cell of own) {
      if (!kept.has(cell)) {
        skipped += cell.chance
        continue
      }
      if (open && cell.fromM - open.toM <= gapM)
        open = { ...open, toM: cell.toM, chance: open.chance + skipped + cell.chance }
      else {
        if (open) places.push(open)
        open = { line, fromM: cell.fromM, toM: cell.toM, chance: cell.chance }
      }
      skipped = 0
    }
    if (open) places.push(open)
  }
  const sorted = places.sort((a, b) => b.chance - a.chance)
  return sorted.filter(({ chance }, k) => k === 0 || chance >= LEAST_LISTED)
}

/** Where half of a stretch's chance lies on either side, m. */
export function middleOf(cells: readonly Cell[], { line, fromM, toM, chance }: LikelyStretch): number {
  let left = chance / 2
  for (const cell of cells) {
    if (cell.line !== line || cell.toM <= fromM || cell.fromM >= toM) continue
    if (cell.chance >= left) return cell.fromM + (left / cell.chance) * (cell.toM - cell.fromM)
    left -= cell.chance
  }
  return (fromM + toM) / 2
}
