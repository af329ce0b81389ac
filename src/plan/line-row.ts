import { foundFor, memoryOfRow, remembering } from '../memo'
import type { LineId, StationId } from './id'
import type { Line, Plan, Station } from './plan'

/** All lines of a plan in their order, and at the same places the stations where they begin and end. */
export interface LineRow {
  readonly lines: readonly Line[]
  readonly starts: readonly Station[]
  readonly ends: readonly Station[]
}

const rememberedStarts = memoryOfRow<Line, Station>()
const rememberedEnds = memoryOfRow<Line, Station>()

const remembered = remembering((lines: Plan['lines'], stations: Plan['stations']): LineRow => {
  const row = [...lines.values()]
  const stationOf = (line: Line, id: StationId): Station => {
    const station = stations.get(id)
    if (!station) throw new Error(`line ${line.id} ends on a station that is not in the plan`)
    return station
  }
  return {
    lines: row,
    starts: rememberedStarts(row, [stations], [], (line) => stationOf(line, line.from)),
    ends: rememberedEnds(row, [stations], [], (line) => stationOf(line, line.to)),
  }
})

export const lineRowOf = ({ lines, stations }: Pick<Plan, 'lines' | 'stations'>): LineRow =>
  remembered(lines, stations)

/** Between which stations each line leads. */
export type LineEnds = ReadonlyMap<LineId, Pick<Line, 'id' | 'from' | 'to'>>

let known: LineEnds = new Map()

const rememberedNet = remembering((lines: Plan['lines']): LineEnds => {
  if (known.size !== lines.size || !isSameNet(known, lines))
    known = new Map([...lines.values()].map(({ id, from, to }) => [id, { id, from, to }]))
  return known
})

/** The same object as long as no line leads elsewhere, comes or goes: most edits move things, and change nothing of what hangs on what. */
export const lineEndsOf = ({ lines }: Pick<Plan, 'lines'>): LineEnds => rememberedNet(lines)

function isSameNet(before: LineEnds, lines: Plan['lines']): boolean {
  const others = before.values()
  for (const { id, from, to } of lines.values()) {
    const ends = others.next().value!
    if (id !== ends.id || from !== ends.from || to !== ends.to) return false
  }
  return true
}

/** In which row stands what a map knows of each line: the same is asked a dozen times of one plan. */
const rows = foundFor<
  ReadonlyMap<LineId, unknown>,
  { readonly lines: readonly Line[]; readonly row: readonly unknown[] }
>()

/** What is known of each line, in the order of the lines. */
export function inRow<T>(lines: readonly Line[], known: ReadonlyMap<LineId, T>): readonly T[] {
  const found = rows.get(known)
  if (found?.lines === lines) return found.row as readonly T[]
  const row = lines.map(({ id }) => known.get(id)!)
  rows.set(known, { lines, row })
  return row
}

/** The same, by line. */
export function byLine<T>(lines: readonly Line[], row: readonly T[]): ReadonlyMap<LineId, T> {
  const known = new Map<LineId, T>()
  for (let place = 0; place < lines.length; place++) known.set(lines[place]!.id, row[place]!)
  rows.set(known, { lines, row })
  return known
}
