import type { Planted, PlantedLine } from './planted'

/** A tag for each so many metres of wire, and one at each end. */
const TAG_EVERY_M = 500

export type Place = string | { readonly line: string; readonly wireM: number }

/** Tags of a line, from its `from` on, m. */
const tagsAlong = ({ wireM }: PlantedLine): readonly number[] => {
  const count = Math.ceil(wireM / TAG_EVERY_M)
  return Array.from({ length: count + 1 }, (_, k) => (wireM * k) / count)
}

export const tagsOn = ({ lines }: Planted) =>
  lines.flatMap((line) => tagsAlong(line).map((wireM) => ({ line: line.id, wireM })))

/** Lines from s0 out to a place, the place's own last: lines lead away from s0. */
function wayOut(lines: readonly PlantedLine[], place: Place): readonly PlantedLine[] {
  const line = lines.find(({ id, to }) => (typeof place === 'string' ? to === place : id === place.line))
  return line ? [...wayOut(lines, line.from), line] : []
}

/** Wire from s0 to a place, m. */
export function outM({ lines }: Pick<Planted, 'lines'>, place: Place): number {
  const way = wayOut(lines, place)
  const wholeM = way.reduce((sum, { wireM }) => sum + wireM, 0)
  return typeof place === 'string' ? wholeM : wholeM - way.at(-1)!.wireM + place.wireM
}

/** Wire between two places of a net without rings, m. */
export function apartM(fault: Pick<Planted, 'lines'>, a: Place, b: Place): number {
  const [first, second] = [wayOut(fault.lines, a), wayOut(fault.lines, b)]
  let shared = 0
  while (shared < first.length && first[shared] === second[shared]) shared++
  // On one way the nearer lies before the farther; else both lead back to where they part.
  if (shared === first.length || shared === second.length) return Math.abs(outM(fault, a) - outM(fault, b))
  return outM(fault, a) + outM(fault, b) - 2 * outM(fault, first[shared]!.from)
}

interface Piece {
  readonly ends: readonly [string, string]
  readonly lengthM: number
  readonly isFaulty: boolean
}

/**
 * Metres walked by who halves by tags: to the tag that parts what is left in question most evenly, where a test each way tells without
 * fail on which side the fault lies, and so on; the last stretch between two tags is looked along. Of the branches of the net he knows as
 * little as anybody. US Army subcourse SS0440, p. 2-12 and 2-13, for a line; for a net its likeness.
 */
export function halvingM(fault: Planted): number {
  const places = new Map<string, Place>()
  const pieces = fault.lines.flatMap((line) => {
    const tags = tagsAlong(line)
    const names = tags.map((wireM, k) => {
      const isEnd = k === 0 || k === tags.length - 1
      const name = isEnd ? (k === 0 ? line.from : line.to) : `${line.id}/${k}`
      places.set(name, isEnd ? name : { line: line.id, wireM })
      return name
    })
    return tags.slice(1).map((toM, k): Piece => {
      const fromM = tags[k]!
      const isFaulty = fault.line === line.id && fault.wireM >= fromM && fault.wireM <= toM
      return { ends: [names[k]!, names[k + 1]!], lengthM: toM - fromM, isFaulty }
    })
  })
  let at = 's0'
  let walkedM = 0
  let left = sides(pieces, at).find((side) => side.some(({ isFaulty }) => isFaulty))!
  while (left.length > 1) {
    const worst = (tag: string) => Math.max(...sides(left, tag).map(lengthOf))
    const walkM = (tag: string) => apartM(fault, places.get(at)!, places.get(tag)!)
    const tags = [...new Set(left.flatMap(({ ends }) => ends))]
    const next = tags.toSorted((a, b) => worst(a) - worst(b) || walkM(a) - walkM(b))[0]!
    walkedM += walkM(next)
    at = next
    left = sides(left, at).find((side) => side.some(({ isFaulty }) => isFaulty))!
  }
  return walkedM + apartM(fault, places.get(at)!, fault)
}

const lengthOf = (pieces: readonly Piece[]) => pieces.reduce((sum, { lengthM }) => sum + lengthM, 0)

/** What a net of pieces falls into when it is cut at a tag. */
function sides(pieces: readonly Piece[], tag: string): readonly (readonly Piece[])[] {
  const left = new Set(pieces)
  const out: Piece[][] = []
  for (const first of pieces.filter(({ ends }) => ends.includes(tag))) {
    const side = [first]
    left.delete(first)
    for (let tip = [first]; tip.length > 0; ) {
      const ends = new Set(tip.flatMap((each) => each.ends).filter((end) => end !== tag))
      tip = [...left].filter((each) => each.ends.some((end) => ends.has(end)))
      for (const each of tip) left.delete(each)
      side.push(...tip)
    }
    out.push(side)
  }
  return out
}
