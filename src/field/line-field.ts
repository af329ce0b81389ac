import type { Oddity } from './explain'
import type { LearnedFigures } from './learned-figures'
import type { Done } from './stretches'

/** What was laid and read of a line, and what readings teach of its wire. */
export interface LineField {
  /** Wire that lies there now, that was tested, and that was taken up and not laid again, m. */
  readonly laidM: number
  readonly testedM: number
  readonly recoveredM: number
  readonly done: Done
  /** Figures of its wire as readings have them, on this line and on any other of that wire. */
  readonly learned: LearnedFigures
  /** Readings of this line that are asked about, the oddest first. */
  readonly oddities: readonly Oddity[]
}

export const NOTHING_RECORDED: LineField = {
  laidM: 0,
  testedM: 0,
  recoveredM: 0,
  done: { laid: [], tested: [], recovered: [] },
  learned: {},
  oddities: [],
}
