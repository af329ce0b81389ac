import { memoryOfEach } from '../memo'
import type { LineId } from '../plan/id'
import type { Plan } from '../plan/plan'
import { type StandingRecord, standingRecords } from '../plan/standing-records'
import type { Oddity } from './explain'
import type { Learned, LearnedFigures } from './learned-figures'
import { type Done, doneOn, lengthM, NOTHING_DONE } from './stretches'

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
  done: NOTHING_DONE,
  learned: {},
  oddities: [],
}

const remembered = memoryOfEach<Learned, ReadonlyMap<LineId, LineField>>()

/** The same for every line on which something was recorded, or of whose wire something was learned. */
export const lineFields = (plan: Plan, learned: Learned): ReadonlyMap<LineId, LineField> =>
  plan.field === undefined
    ? new Map()
    : remembered(learned, [plan.field, wiresOf(plan)], () => reckon(plan, learned))

/** Which line is of which wire, as something that is the same as long as it says the same. */
const wiresOf = ({ lines }: Plan): string =>
  [...lines.values()].map(({ id, wire }) => `${id}\n${wire}`).join('\n')

function reckon(plan: Plan, { figures, odd }: Learned): ReadonlyMap<LineId, LineField> {
  const byLine = new Map<LineId, StandingRecord[]>()
  for (const record of standingRecords(plan)) {
    const before = byLine.get(record.line)
    if (before) before.push(record)
    else byLine.set(record.line, [record])
  }
  const fields = new Map<LineId, LineField>()
  for (const { id, wire } of plan.lines.values()) {
    const records = byLine.get(id)
    const learned = figures.get(wire)
    if (!records && !learned) continue
    const done = doneOn(records ?? [])
    fields.set(id, {
      laidM: lengthM(done.laid),
      testedM: lengthM(done.tested),
      recoveredM: lengthM(done.recovered),
      done,
      learned: learned ?? {},
      oddities: odd.filter(({ line }) => line === id),
    })
  }
  return fields
}
