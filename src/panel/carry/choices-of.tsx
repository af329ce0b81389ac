import { placeOf } from '../../journal/keys'
import type { ToChoose, TornProperty } from '../../share/sharing'
import type { Store } from '../../state/store'
import { propertyValueWords } from '../../words/property-value-words'
import { propertyWords } from '../../words/property-words'
import { formatCount } from '../../words/units'
import { ShowPlace } from '../show-place'
import { HandMark } from './hand-mark'
import { momentWords } from './moment-words'
import { signIn } from './sign-in'

/** More than these are shown when somebody asks: they must not push all else away. */
const FEW = 3

interface Props {
  readonly store: Store
  readonly toChoose: ToChoose
  readonly torn: readonly TornProperty[]
}

/** What several set differently, side by side: one press chooses. */
export function ChoicesOf({ store, toChoose, torn }: Props) {
  const count = formatCount(torn.length, 'thing')
  return (
    <details class="to-choose" open={torn.length <= FEW}>
      <summary>
        {count} set differently by several{toChoose.mayWrite ? ': choose' : ''}
      </summary>
      <p class="soft">Until somebody chooses, what was set last holds. To choose undoes nothing else.</p>
      {torn.map((each) => (
        <Torn key={each.key} store={store} toChoose={toChoose} torn={each} />
      ))}
      {toChoose.mayWrite && torn.length > 1 && (
        <button
          type="button"
          onClick={() => {
            for (const { key, choices } of torn) toChoose.choose(key, choices[0]!.value)
          }}
        >
          Keep all as they hold now
        </button>
      )}
    </details>
  )
}

function Torn({ store, toChoose, torn }: Omit<Props, 'torn'> & { readonly torn: TornProperty }) {
  const plan = store.plan.value
  return (
    <fieldset>
      <legend>
        {propertyWords(plan, torn.key)} <ShowPlace store={store} where={placeOf(torn.key)?.id ?? ''} />
      </legend>
      <div class="choices-of">
        {torn.choices.map((choice, index) => (
          <button
            key={`${choice.who} ${choice.atMs} ${index}`}
            type="button"
            disabled={!toChoose.mayWrite}
            onClick={() => toChoose.choose(torn.key, choice.value)}
          >
            {propertyValueWords(plan, torn.key, choice.value, store.tongue.value)}
            <span class="soft">
              {toChoose.names && <HandMark sign={signIn(toChoose, choice.who)} />} <bdi>{choice.who}</bdi>
              {choice.atMs > 0 && `, ${momentWords(choice.atMs)}`}
              {index === 0 && (
                <>
                  , <strong>holds now</strong>
                </>
              )}
            </span>
          </button>
        ))}
      </div>
    </fieldset>
  )
}
