import { enduranceRows } from '../../budget/endurance'
import { setWork } from '../../plan/settings-edits'
import { WORK, workOf } from '../../plan/work'
import { useOf } from '../../report/outlook'
import type { CircuitStudy } from '../../state/circuit-study'
import type { Store } from '../../state/store'
import { batteryWords, enduranceSentence } from '../../words/outlook-words'
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
        {rows.map((row) => (
          <li key={row.set}>{enduranceSentence(row, say)}</li>
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
          {rows.map(
            ({ set, drain }) =>
              drain && (
                <li key={set}>
                  The {batteryWords({ set }, say)}: talking draws {formatMA(drain.talkMA)}, waiting{' '}
                  {formatMA(drain.idleMA)}; at that drain it gives {plainNumber(drain.ampHours)} Ah in all.
                </li>
              ),
          )}
        </ul>
      </OnDemand>
    </Question>
  )
}
