import './together.css'
import { useId } from 'preact/hooks'
import type { Sharing } from '../../share/sharing'
import type { Store } from '../../state/store'
import { BeginSharing } from './begin-sharing'
import { CarryDialog } from './carry-dialog'
import { ChoicesOf } from './choices-of'
import { HandMark } from './hand-mark'
import { Invite } from './invite'
import { KeysAndLeaving } from './keys-and-leaving'
import { LogOfSteps } from './log-of-steps'
import { signIn } from './sign-in'
import { standingWords } from './together-strip'
import { WhoIsHere } from './who-is-here'

/** The plan that several change together: with whom, what waits for a choice, who did what; or how to begin. */
export function Together({ store }: { store: Store }) {
  const sharing = store.sharing.value
  return (
    <CarryDialog
      title="Change the plan together"
      letsMapShow
      onClose={() => {
        store.carrying.value = null
      }}
    >
      <div class="together">
        {sharing && <Shared store={store} sharing={sharing} />}
        {sharing && !sharing.box && <h2>With others, over a box</h2>}
        {!sharing?.box && <BeginSharing store={store} />}
      </div>
    </CarryDialog>
  )
}

function Shared({ store, sharing }: { store: Store; sharing: Sharing }) {
  const { box } = sharing
  const torn = sharing.torn.value
  return (
    <>
      <p role="status">{standingWords(sharing)}.</p>
      {sharing.mayWrite ? (
        <p class="soft">
          What you change comes to all. Undo takes back your own steps alone: where somebody changed the same
          thing after you, theirs stays.
        </p>
      ) : (
        <p>
          You read this plan, and the others do not see you. What you change here reaches nobody, and goes
          when the next change comes in: to keep it, stop sharing first.
        </p>
      )}
      {box && sharing.mayWrite && <OwnName sharing={sharing} />}
      {torn.length > 0 && (
        <section>
          <ChoicesOf store={store} toChoose={sharing} torn={torn} />
        </section>
      )}
      {sharing.said.value.length > 0 && (
        <section>
          <h2>What came of it</h2>
          <ul class="said">
            {sharing.said.value.map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
          <button type="button" onClick={sharing.putAway}>
            Understood
          </button>
        </section>
      )}
      <WhoIsHere store={store} sharing={sharing} />
      {box && box.standing.value !== 'moved' && <Invite box={box} mayInviteToWrite={sharing.mayWrite} />}
      <LogOfSteps store={store} sharing={sharing} />
      {box && <KeysAndLeaving store={store} sharing={sharing} box={box} />}
    </>
  )
}

function OwnName({ sharing }: { sharing: Sharing }) {
  const id = useId()
  const name = sharing.name.value
  return (
    <div class="own-name">
      <label for={id}>
        {name && <HandMark sign={signIn(sharing, 'You')} />} Your name, as others read it
      </label>
      <input
        id={id}
        maxLength={70}
        autocomplete="nickname"
        placeholder="Base, Line crew 2 …"
        value={name}
        onInput={(event) => {
          sharing.name.value = event.currentTarget.value
        }}
      />
    </div>
  )
}
