import { type Signal, useSignal } from '@preact/signals'
import { useEffect, useId } from 'preact/hooks'
import type { Odds } from '../../budget/odds'
import { isolated } from '../../isolated'
import type { CircuitId } from '../../plan/id'
import { type Reckoned, watchProspect } from '../../state/circuit-prospect'
import type { Store } from '../../state/store'
import {
  hundredOf,
  NO_TIP,
  oddsSentence,
  type TipGroup,
  tipGroups,
  tipSentence,
} from '../../words/odds-words'
import {
  aloneSentences,
  callingSentence,
  crowdSentence,
  leftSentence,
  pitchSentence,
  quotedSentence,
  reachAlongSentence,
} from '../../words/outlook-words'
import { loadWhenShown } from '../load-when-shown'
import { Question } from '../question'
import { HundredView } from './hundred'
import './study.css'

const MeasuredForm = loadWhenShown(async () => (await import('./measured-form')).MeasuredForm)

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
  const left = leftSentence(outlook.offHook, say)
  const badDay = [left, crowdSentence(outlook.crowd, say)].filter(Boolean)
  return (
    <>
      <Question ask="How do we call?">
        <p>{callingSentence(outlook.calling, say)}</p>
      </Question>
      <Question ask="How sure is it?">
        <p>{oddsSentence(odds)}</p>
        <HundredView hundred={hundredOf(odds)} />
        <Tips tips={odds.tips} id={id} nameOfEntry={nameOfEntry} store={store} isSure={isSure(odds)} />
      </Question>
      {outlook.pitch && <p>{pitchSentence(outlook.pitch, say)}</p>}
      {badDay.length > 0 && (
        <Question ask={left ? 'What if a handset is left off?' : 'What if everybody listens?'}>
          {badDay.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </Question>
      )}
    </>
  )
}

/** All of them work, or none does, today and at worst: measuring settles nothing. */
const isSure = ({ today, worst }: Odds): boolean =>
  [today.works, worst.works].every((share) => share === 0 || share === 1)

/** What the doubt hangs on, by figures to be measured. */
function Tips(props: {
  readonly store: Store
  readonly id: CircuitId
  readonly tips: Odds['tips']
  readonly nameOfEntry: (entry: string) => string
  readonly isSure: boolean
}) {
  if (props.isSure) return null
  const groups = tipGroups(props.tips)
  if (groups.length === 0) return <p class="soft">{NO_TIP}</p>
  return groups.map((group) => (
    <Tip
      key={`${group.what} ${group.entry}`}
      store={props.store}
      id={props.id}
      tip={group}
      words={tipSentence(group, props.nameOfEntry, props.store.tongue.value)}
    />
  ))
}

/** One figure to be measured, and the form for what was measured. */
function Tip(props: {
  readonly store: Store
  readonly id: CircuitId
  readonly tip: TipGroup
  readonly words: string
}) {
  const isOpen = useSignal(false)
  const form = useId()
  return (
    <div class="tip">
      <p class="soft">
        {props.words}{' '}
        <button
          type="button"
          class="quiet"
          aria-expanded={isOpen.value}
          aria-controls={form}
          onClick={() => {
            isOpen.value = !isOpen.value
          }}
        >
          I measured it
        </button>
      </p>
      <div id={form}>
        {isOpen.value && (
          <MeasuredForm
            store={props.store}
            id={props.id}
            tip={props.tip}
            onTaken={() => {
              isOpen.value = false
            }}
          />
        )}
      </div>
    </div>
  )
}

/** How much wire the circuit could have along its route, why that is more than people quote, and what each part of the worst weather takes of it. */
export function ReachAlongRoute({ store, id, reckoned }: Props) {
  const { prospect, failure } = reckoned.value
  const found = store.report.value.circuits.find((each) => each.id === id)
  if (!found || failure) return null
  if (!prospect) return <p class="soft">It is being worked out.</p>
  const say = store.tongue.value
  const quoted = quotedSentence(prospect.outlook, say)
  const alone = aloneSentences(prospect.outlook, say)
  return (
    <>
      <p>{reachAlongSentence(found, prospect.outlook, say)}</p>
      {quoted && <p class="soft">{quoted}</p>}
      {alone.length > 0 && (
        <>
          <p>Each part of the worst weather alone would leave it:</p>
          <ul class="plain">
            {alone.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </>
      )}
    </>
  )
}
