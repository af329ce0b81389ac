import { placeOf } from '../../journal/keys'
import type { ToChoose, TornProperty } from '../../share/sharing'
import type { Store } from '../../state/store'
import { propertyValueWords, propertyWords } from '../../words/property-words'
import { ShowPlace } from '../show-place'

interface Props {
  readonly store: Store
  readonly toChoose: ToChoose
  readonly torn: readonly TornProperty[]
}

/** What several set differently, side by side: one press chooses. */
export const ChoicesOf = ({ store, toChoose, torn }: Props) => (
  <>
    {torn.map((each) => (
      <Torn key={each.key} store={store} toChoose={toChoose} torn={each} />
    ))}
  </>
)

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
            {propertyValueWords(plan, torn.key, choice.value)}
            <br />
            <span class="soft">
              <bdi>{choice.who}</bdi>
              {choice.atMs > 0 && `, ${new Date(choice.atMs).toLocaleTimeString()}`}
              {index === 0 ? ', holds now' : ''}
            </span>
          </button>
        ))}
      </div>
    </fieldset>
  )
}
