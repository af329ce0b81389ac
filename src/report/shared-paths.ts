import { legGeometry } from '../geo/leg-length'
import type { Position } from '../geo/position'
import { remembering } from '../memo'
import type { LineId } from '../plan/id'
import { lineRowOf } from '../plan/line-row'
import type { Line, Plan } from '../plan/plan'

/** Places are one that are one to this part of a degree: about a metre. */
const SPOTS_PER_DEG = 1e5

/** One number for each spot: 10⁸ apart from one longitude to the next. */
export const spotOf = ([lonDeg, latDeg]: Position): number =>
  Math.round(lonDeg * SPOTS_PER_DEG) * 1e8 + Math.round(latDeg * SPOTS_PER_DEG)

/** A line that lies on the path of one before it. */
export interface SharedPath {
  readonly line: LineId
  readonly other: LineId
  readonly position: readonly [lonDeg: number, latDeg: number]
  readonly sharedM: number
}

/** A leg by its spots: two legs are one where both their ends are. */
interface SpottedLeg {
  readonly middle: number
  readonly ends: readonly [number, number]
  readonly from: Position
  readonly to: Position
}

interface SpottedLine {
  readonly line: Line
  readonly from: Position
  readonly to: Position
  readonly legs: readonly SpottedLeg[]
}

/**
 * Every leg of a net by the spot half way along it. Kept from one plan to the next, and brought up to date only where a line is another:
 * of a thousand lines one moves at a time.
 */
class LegIndex {
  private readonly lines = new Map<LineId, SpottedLine>()
  private readonly bySpot = new Map<number, LineId[]>()
  /** Spots where more than one leg lies. */
  readonly crowded = new Set<number>()

  update(stations: Plan['stations'], lines: Plan['lines']): void {
    for (const [id, { legs }] of this.lines) {
      if (lines.has(id)) continue
      this.change(id, legs, [])
      this.lines.delete(id)
    }
    const row = lineRowOf({ lines, stations })
    for (const [place, line] of row.lines.entries()) {
      const [from, to] = [row.starts[place]!.position, row.ends[place]!.position]
      const known = this.lines.get(line.id)
      if (known && known.line === line && known.from === from && known.to === to) continue
      const legs = spottedLegs([from, ...line.bends, to])
      this.change(line.id, known?.legs ?? [], legs)
      this.lines.set(line.id, { line, from, to, legs })
    }
  }

  at(spot: number): readonly SpottedLine[] {
    return (this.bySpot.get(spot) ?? []).map((id) => this.lines.get(id)!)
  }

  /** Only the legs that are others are taken out and put in: a map remembers for long what was deleted from it, and slows down. */
  private change(id: LineId, before: readonly SpottedLeg[], after: readonly SpottedLeg[]): void {
    const least = Math.min(before.length, after.length)
    let start = 0
    while (start < least && before[start]!.middle === after[start]!.middle) start++
    let end = 0
    while (end < least - start && before.at(-1 - end)!.middle === after.at(-1 - end)!.middle) end++
    for (let i = start; i < before.length - end; i++) this.take(id, before[i]!.middle)
    for (let i = start; i < after.length - end; i++) this.put(id, after[i]!.middle)
  }

  private put(id: LineId, spot: number): void {
    const there = this.bySpot.get(spot)
    if (!there) this.bySpot.set(spot, [id])
    else {
      there.push(id)
      this.crowded.add(spot)
    }
  }

  private take(id: LineId, spot: number): void {
    const there = this.bySpot.get(spot) ?? []
    there.splice(there.indexOf(id), 1)
    if (there.length < 2) this.crowded.delete(spot)
    if (there.length === 0) this.bySpot.delete(spot)
  }
}

function spottedLegs(vertices: readonly Position[]): SpottedLeg[] {
  const spots = vertices.map(spotOf)
  return vertices.slice(1).flatMap((to, i): SpottedLeg[] => {
    const from = vertices[i]!
    const ends = [spots[i]!, spots[i + 1]!] as const
    return ends[0] === ends[1] ? [] : [{ middle: spotOf([from[0] + to[0], from[1] + to[1]]), ends, from, to }]
  })
}

const index = new LegIndex()

/**
 * Lines that lie on another's path, each with the first of the lines there. A second run of wire from end to end beside the first is
 * meant as long as circuits use both: remedies lay such runs.
 */
export const sharedPaths = remembering(
  (stations: Plan['stations'], lines: Plan['lines'], circuits: Plan['circuits']): readonly SharedPath[] => {
    index.update(stations, lines)
    if (index.crowded.size === 0) return []
    const inUse = new Set([...circuits.values()].flatMap((circuit) => circuit.lines))
    const isMeant = (a: Line, b: Line) =>
      inUse.has(a.id) && inUse.has(b.id) && new Set([a.from, a.to, b.from, b.to]).size === 2
    const placeOfLine = new Map([...lines.keys()].map((id, place) => [id, place]))
    const placed = ({ line }: SpottedLine) => placeOfLine.get(line.id)!

    const shared = new Map<string, SharedPath>()
    for (const spot of index.crowded) {
      const [first, ...others] = [...new Set(index.at(spot))].sort((a, b) => placed(a) - placed(b))
      if (!first) continue
      const own = first.legs.find(({ middle }) => middle === spot)!
      for (const other of others) {
        const leg = other.legs.find(
          ({ middle, ends }) => middle === spot && ends.every((end) => own.ends.includes(end)),
        )
        if (!leg || isMeant(first.line, other.line)) continue
        const key = `${other.line.id}\n${first.line.id}`
        const before = shared.get(key)
        shared.set(key, {
          line: other.line.id,
          other: first.line.id,
          position: before?.position ?? [leg.from[0], leg.from[1]],
          sharedM: (before?.sharedM ?? 0) + legGeometry(leg.from, leg.to).mapM,
        })
      }
    }
    return [...shared.values()].sort((a, b) => placeOfLine.get(a.line)! - placeOfLine.get(b.line)!)
  },
)
