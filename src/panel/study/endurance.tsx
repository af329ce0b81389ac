import { type Endurance, enduranceOf } from '../../budget/endurance'
import { setWork } from '../../plan/settings-edits'
import { WORK, workOf } from '../../plan/work'
import type { CircuitStudy } from '../../state/circuit-study'
import type { Store } from '../../state/store'
import { formatCount, formatMA, formatTempC, plainNumber } from '../../words/units'
import { NumberField } from '../number-field'
import { OnDemand, Question } from '../question'

/** How long the battery of a circuit lasts; nothing where its supply is no battery. */
export function EnduranceQuestion({ store, study }: { store: Store; study: CircuitStudy }) {
  const { plan, model, conditions } = study
  const system = store.units.value
  const endurance = enduranceOf(model, conditions, workOf(plan, 'talkMinutesPerDay'), plan.wireTempC)
  if (!endurance) return null
  const { talkMA, idleMA, ampHours, source } = endurance
  return (
    <Question ask="How long does the battery last?">
      <p>{enduranceSentence(endurance)}</p>
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
          Talking draws {formatMA(talkMA)} in the heaviest call, waiting {formatMA(idleMA)}. At that drain and
          at {formatTempC(plan.wireTempC, system)} the battery gives {plainNumber(ampHours)} Ah. Days =
          capacity ÷ (talking × hours of talk + waiting × the other hours).
        </p>
        <p class="soft source">Where the capacity comes from: {source}</p>
      </OnDemand>
    </Question>
  )
}

/** How long, in words that fit the length. */
export function enduranceSentence({ days }: Pick<Endurance, 'days'>): string {
  if (!Number.isFinite(days)) return 'As long as it keeps: nothing is drawn from it.'
  if (days > 730) return `About ${Math.round(days / 365)} years by its drain: its own ageing ends it sooner.`
  if (days >= 2) return `About ${Math.round(days)} days.`
  return `About ${formatCount(Math.max(1, Math.round(days * 24)), 'hour')}.`
}
