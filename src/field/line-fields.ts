import { memoryOfEach } from '../memo'
import type { LineId } from '../plan/id'
import type { Plan } from '../plan/plan'
import { type StandingRecord, standingRecords } from '../plan/standing-records'
import type { Learned } from './learned-figures'
import type { LineField } from './line-field'
import { doneOn, lengthM } from './stretches'

const remembered = memoryOfEach<Learned, ReadonlyMap<LineId, LineField>>()

/** What was laid and read for every line on which something was recorded, or of whose wire something was learned. */
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
