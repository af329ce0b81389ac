import { useSignal } from '@preact/signals'
import { keyOf } from '../../journal/keys'
import type { LoggedStep, Sharing } from '../../share/sharing'
import type { Store } from '../../state/store'
import { thingWords } from '../../words/property-words'
import { stepWords } from '../../words/step-words'
import { formatCount } from '../../words/units'
import { Tick } from '../tick'
import { HandMark } from './hand-mark'
import { momentWords } from './moment-words'
import { signIn } from './sign-in'

/** The log gives no more than these. */
const MOST_SHOWN = 200

/** Who changed what, the last first, with the way back to each moment. */
export function LogOfSteps({ store, sharing }: { store: Store; sharing: Sharing }) {
  const steps = sharing.log.value
  const said = useSignal('')
  const who = useSignal('')
  const isOfSelected = useSignal(false)
  const { box } = sharing
  const selection = store.selection.value
  const selected =
    selection && selection.kind !== 'several' ? keyOf(`${selection.kind}s`, selection.id, '') : ''
  const shown = steps.filter(
    (step) =>
      (who.value === '' || step.who === who.value) &&
      (!isOfSelected.value || selected === '' || step.keys.some((key) => key.startsWith(selected))),
  )
  const hands = [...new Set(steps.map((step) => step.who))].sort()
  const readAll = async () => {
    said.value = 'Reading all that the box has …'
    said.value = (await box!.readAll()) || 'The log begins with the plan now.'
  }
  const goBack = (step: LoggedStep) => {
    sharing.goBackTo(step)
    store.notice.value = `The plan is as it was after the step of ${momentWords(step.atMs)}, for everybody. Undo takes that back.`
  }
  if (steps.length === 0 && !box) return null
  return (
    <section>
      <h2>Who changed what</h2>
      {steps.length === 0 && <p>Nothing has been changed since this page joined.</p>}
      {steps.length > 1 && (
        <div class="log-filter">
          {hands.length > 1 && (
            <label>
              Steps of{' '}
              <select
                value={who.value}
                onChange={(event) => {
                  who.value = event.currentTarget.value
                }}
              >
                <option value="">everybody</option>
                {hands.map((each) => (
                  <option key={each} value={each}>
                    {each}
                  </option>
                ))}
              </select>
            </label>
          )}
          {selected !== '' && (
            <Tick
              checked={isOfSelected.value}
              onChange={(isTicked) => {
                isOfSelected.value = isTicked
              }}
            >
              Only of {thingWords(store.plan.value, selected)}
            </Tick>
          )}
        </div>
      )}
      {shown.length < steps.length && (
        <p class="soft" role="status">
          {shown.length} of {formatCount(steps.length, 'step')}.
        </p>
      )}
      {shown.length > 0 && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a list that scrolls is reached by the keyboard
        <ul class="log" tabIndex={0} aria-label="Steps, the last first">
          {shown.map((step) => (
            <Step
              key={`${step.atMs} ${step.who} ${step.keys[0]}`}
              sharing={sharing}
              step={step}
              onBack={goBack}
            />
          ))}
        </ul>
      )}
      {steps.length >= MOST_SHOWN && <p class="soft">These are the last {MOST_SHOWN}.</p>}
      {box && (
        <div class="acts">
          <button type="button" onClick={() => void readAll()}>
            From the beginning
          </button>
        </div>
      )}
      <p class="soft" role="status">
        {said.value}
      </p>
    </section>
  )
}

function Step({
  sharing,
  step,
  onBack,
}: {
  sharing: Sharing
  step: LoggedStep
  onBack: (step: LoggedStep) => void
}) {
  const when = momentWords(step.atMs)
  return (
    <li>
      <span class="who">
        <HandMark sign={signIn(sharing, step.who)} /> <bdi>{step.who}</bdi>
        <span class="soft">, {when}</span>
      </span>
      <span class="done">{stepWords(sharing.everKnown(), step)}</span>
      {sharing.mayWrite && (
        <button
          type="button"
          class="quiet"
          aria-label={`Back to here: after the step of ${step.who}, ${when}`}
          onClick={() => onBack(step)}
        >
          Back to here
        </button>
      )}
    </li>
  )
}
