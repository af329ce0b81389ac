import { type EnduranceRow, enduranceRows } from '../../budget/endurance'
import { setWork } from '../../plan/settings-edits'
import { WORK, workOf } from '../../plan/work'
import { useOf } from '../../report/outlook'
import type { CircuitStudy } from '../../state/circuit-study'
import type { Store } from '../../state/store'
import { batteryWords, enduranceSentences } from '../../words/outlook-words'
import { formatMA, formatTempC, plainNumber } from '../../words/units'
import { NumberField } from '../number-field'
import { OnDemand, Question } from '../question'

/** How long every battery of a circuit lasts; nothing where it has none. */
export function EnduranceQuestion({ store, study }: { store: Store; study: CircuitStudy }) {
  const { plan, model, conditions } = study
  const system = store.units.value
  const say = store.tongue.value
  const rows = enduranceRows(model, conditions, useOf(plan))
  if (rows.length === 0) return null
  return (
    <Question ask="How long do the batteries last?">
      <ul class="plain">
        {enduranceSentences(rows, say).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <NumberField
        label="Talk a day"
        quantity="minute"
        system={system}
        value={workOf(plan, 'talkMinutesPerDay')}
        limit={WORK.talkMinutesPerDay}
        onCommit={(minutes) => store.tryEdit((before) => setWork(before, 'talkMinutesPerDay', minutes))}
      />
      <OnDemand title="How this is worked out">
        <p>
          Until a check of the circuit fails in the plan's weather as the volts fall, or the battery is spent.
          Days = what it gives until then ÷ (talking × hours of talk + waiting × the other hours), at{' '}
          {formatTempC(plan.wireTempC, system)}. Its own entry says where its capacity comes from.
        </p>
        <ul class="plain">
          {drains(rows).map(({ set, drain: { talkMA, idleMA, ampHours }, count }) => (
            <li key={set}>
              The {batteryWords({ set }, say)}
              {count > 1 && ` and ${count - 1} more`}: talking draws {formatMA(talkMA)}, waiting{' '}
              {formatMA(idleMA)}; at that drain it gives {plainNumber(ampHours)} Ah in all.
            </li>
          ))}
        </ul>
      </OnDemand>
    </Question>
  )
}

/** Drains that are alike once, with how many batteries have them. */
function drains(rows: readonly EnduranceRow[]) {
  const alike = new Map<
    string,
    { set: string | null; drain: NonNullable<EnduranceRow['drain']>; count: number }
  >()
  for (const { set, drain } of rows) {
    if (!drain) continue
    const key = `${set === null} ${JSON.stringify(drain)}`
    alike.set(key, { set, drain, count: 0, ...alike.get(key) })
    alike.get(key)!.count++
  }
  return [...alike.values()]
}
