import type { Means } from '../../catalog/laying-rates'
import type { LineId } from '../../plan/id'
import { setMeans, setWork } from '../../plan/settings-edits'
import { type WorkField as Name, workOf } from '../../plan/work'
import type { Store } from '../../state/store'
import { rateSentence } from '../../words/done-words'
import { nameIn } from '../../words/tongue'
import { formatHours, hoursSentence, smallCrewSentence } from '../../words/work-words'
import { FromBefore } from '../from-before'
import { OnDemand, Question } from '../question'
import { Tick } from '../tick'
import { WorkField } from './work-field'

const RATES: readonly Name[] = [
  'surfaceKmPerHour',
  'overheadKmPerHour',
  'buriedKmPerHour',
  'waterKmPerHour',
  'recoveryKmPerHour',
]
const TIMES: readonly Name[] = [
  'walkKmPerHour',
  'climbMPerHour',
  'buriedCrossingMin',
  'overheadCrossingMin',
  'railwayCrossingMin',
  'spliceMin',
  'stationMin',
  'nightFactor',
]

/** Hours to lay the net and to take it up again, by which crews, and the rates that they rest on. */
export function Hours({ store }: { store: Store }) {
  const { hours } = store.report.value
  const isNight = workOf(store.plan.value, 'night') === 1
  if (hours.lines.length === 0) return null
  const slow = smallCrewSentence(hours)
  return (
    <Question ask="How long will it take?">
      <FromBefore store={store} what="Minutes for splices" />
      <p>{hoursSentence(hours)}</p>
      {slow && <p class="soft">{slow}</p>}
      {hours.learned?.map((rate) => (
        <p key={rate.what}>{rateSentence(rate, store.tongue.value)}</p>
      ))}
      <WorkField store={store} field="crews" />
      <WorkField store={store} field="peoplePerCrew" />
      <Tick
        checked={isNight}
        onChange={(isTicked) => void store.tryEdit((before) => setWork(before, 'night', isTicked ? 1 : 0))}
      >
        By night
      </Tick>
      <OnDemand title="Line by line, each by one crew">
        <LineHoursList store={store} />
      </OnDemand>
      <OnDemand title="Rates and times, and where they come from">
        <p>
          Each leg at the rate of its lay, an hour more for so much climb, minutes for each crossing, splice
          and station, and the walking: out to each line, back for each load more, and home. The longest line
          goes first, to the crew that is free first. Most rates are allowances: change them to what your
          crews do.
        </p>
        <MeansButtons store={store} />
        {[...RATES, ...TIMES].map((field) => (
          <WorkField key={field} store={store} field={field} sourced />
        ))}
      </OnDemand>
    </Question>
  )
}

function LineHoursList({ store }: { store: Store }) {
  const { hours } = store.report.value
  const nameOf = (id: LineId) => nameIn(store.plan.value, id)
  return (
    <ul class="rows">
      {hours.lines.map(({ line, totalH, recoveryH }) => (
        <li key={line}>
          <button
            type="button"
            class="quiet"
            onClick={() => {
              store.selection.value = { kind: 'line', id: line, legs: [] }
            }}
          >
            {nameOf(line)}
          </button>
          <span>
            {formatHours(totalH)} <span class="soft">recovery {formatHours(recoveryH)}</span>
          </span>
        </li>
      ))}
    </ul>
  )
}

const MEANS: readonly { readonly means: Means; readonly text: string }[] = [
  { means: 'foot', text: 'Take the rates on foot' },
  { means: 'vehicle', text: 'Take the rates by vehicle' },
]

function MeansButtons({ store }: { store: Store }) {
  return (
    <div class="choice">
      {MEANS.map(({ means, text }) => (
        <button key={means} type="button" onClick={() => store.edit((before) => setMeans(before, means))}>
          {text}
        </button>
      ))}
    </div>
  )
}
