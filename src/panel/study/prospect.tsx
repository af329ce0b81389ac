import type { Signal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { isolated } from '../../isolated'
import type { CircuitId } from '../../plan/id'
import { type Reckoned, watchProspect } from '../../state/circuit-prospect'
import type { Store } from '../../state/store'
import { oddsSentence, tipSentence } from '../../words/odds-words'
import {
  callingSentence,
  crowdSentence,
  leftSentence,
  pitchSentence,
  reachAlongSentence,
  worstSentence,
} from '../../words/outlook-words'
import { Question } from '../question'

interface Props {
  readonly store: Store
  readonly id: CircuitId
  readonly reckoned: Signal<Reckoned>
}

/** How one calls, how sure it is, and what a bad day does: reckoned when the hand is still. */
export function ProspectQuestions({ store, id, reckoned }: Props) {
  useEffect(() => watchProspect(store, id, reckoned), [])
  const { prospect, failure } = reckoned.value
  if (failure)
    return (
      <p class="fails" role="alert">
        {failure}
      </p>
    )
  if (!prospect?.odds) return null
  const say = store.tongue.value
  const { outlook, odds } = prospect
  const { wires, sets, supplies } = store.catalog.value
  const nameOfEntry = (entry: string) =>
    isolated((wires.get(entry) ?? sets.get(entry) ?? supplies.get(entry))?.name ?? entry)
  const badDay = [leftSentence(outlook.offHook, say), crowdSentence(outlook.crowd, say)].filter(Boolean)
  return (
    <>
      <Question ask="How do we call?">
        <p>{callingSentence(outlook.calling, say)}</p>
      </Question>
      <Question ask="How sure is it?">
        <p>{oddsSentence(odds)}</p>
        {odds.tips.slice(0, 2).map((tip) => (
          <p key={`${tip.what} ${tip.entry} ${tip.at}`} class="soft">
            {tipSentence(tip, nameOfEntry, say)}
          </p>
        ))}
      </Question>
      {outlook.pitch && <p>{pitchSentence(outlook.pitch, say)}</p>}
      {badDay.length > 0 && (
        <Question ask="What if somebody is careless?">
          {badDay.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </Question>
      )}
    </>
  )
}

/** How much wire the circuit could have along its route, and what it takes to make it fail. */
export function ReachAlongRoute({ store, id, reckoned }: Props) {
  const { prospect } = reckoned.value
  const found = store.report.value.circuits.find((each) => each.id === id)
  if (!prospect || !found) return null
  const say = store.tongue.value
  const worst = worstSentence(prospect.outlook.worstBecause, found.worst, say)
  return (
    <>
      <p>{reachAlongSentence(found, prospect.outlook, say)}</p>
      {worst && <p class="soft">As drawn it {worst}.</p>}
    </>
  )
}
