import './together.css'
import { keyOf } from '../../journal/keys'
import type { Store } from '../../state/store'
import { ChoicesOf } from './choices-of'
import { HandMark } from './hand-mark'
import { signIn } from './sign-in'

const MOST_NAMED = 3

/** On the card of a thing: who else has it open, and what of it waits for a choice; on the plan's card all that waits. */
export function AtThisThing({ store }: { store: Store }) {
  const sharing = store.sharing.value
  const toChoose = sharing ?? store.toChoose.value
  const selection = store.selection.value
  const own = selection && selection.kind !== 'several' ? keyOf(`${selection.kind}s`, selection.id, '') : ''
  const torn = (toChoose?.torn.value ?? []).filter(({ key }) => key.startsWith(own))
  const here = own ? (sharing?.others.value ?? []).filter(({ on }) => on === own) : []
  return (
    <div class="at-this-thing">
      {here.slice(0, MOST_NAMED).map(({ hand, name }) => (
        <p key={hand}>
          <HandMark sign={signIn(sharing!, name)} /> <bdi>{name}</bdi> has this open too.
        </p>
      ))}
      {here.length > MOST_NAMED && <p>And {here.length - MOST_NAMED} more have it open.</p>}
      {toChoose && torn.length > 0 && (
        <section aria-label="To choose">
          <ChoicesOf store={store} toChoose={toChoose} torn={torn} />
        </section>
      )}
    </div>
  )
}
