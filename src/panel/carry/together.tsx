import './together.css'
import { useSignal } from '@preact/signals'
import { useEffect, useId } from 'preact/hooks'
import type { Sharing } from '../../share/sharing'
import type { Store } from '../../state/store'
import { CarryDialog } from './carry-dialog'
import { ChoicesOf } from './choices-of'
import { Invite } from './invite'
import { KeysAndLeaving } from './keys-and-leaving'
import { LogOfSteps } from './log-of-steps'
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
        {!sharing?.box && <Begin store={store} />}
      </div>
    </CarryDialog>
  )
}

function Begin({ store }: { store: Store }) {
  const isOnBox = useSignal<boolean | null>(null)
  const said = useSignal('')
  useEffect(() => {
    void import('../../share/share').then(async ({ isOnBox: look }) => {
      isOnBox.value = await look()
    })
  }, [])
  const begin = async () => {
    said.value = 'Asking the box …'
    const { startSharing } = await import('../../share/share')
    said.value = await startSharing(store)
  }
  if (isOnBox.value === null) return <p>Looking for a box …</p>
  if (!isOnBox.value)
    return (
      <p>
        This page comes from no box. On the machine that is to be the box, run <code>npm run share</code> in
        the program’s folder, open the address that it prints, and share the plan from there.
      </p>
    )
  return (
    <>
      <p>
        The box that served this page can carry the plan to everybody on its network who has the invitation.
        It is sealed: the box knows nothing of what is in it. The program goes on without the box, and catches
        up when it is back. What the box has taken is on its disk within a second; a power cut before that
        loses nothing that is still in the browser of whoever did it.
      </p>
      <div class="acts">
        <button type="button" onClick={() => void begin()}>
          Share over this box
        </button>
      </div>
      <p role="status">{said.value}</p>
    </>
  )
}

function Shared({ store, sharing }: { store: Store; sharing: Sharing }) {
  const id = useId()
  const { box } = sharing
  return (
    <>
      <p role="status">{standingWords(sharing)}.</p>
      {!sharing.mayWrite && <p>You read this plan: what you change stays on this screen alone.</p>}
      {box && (
        <>
          <label for={id}>Your name, as others read it</label>
          <input
            id={id}
            maxLength={70}
            value={sharing.name.value}
            onInput={(event) => {
              sharing.name.value = event.currentTarget.value
            }}
          />
        </>
      )}
      {sharing.torn.value.length > 0 && (
        <section>
          <h2>Set differently by several: choose</h2>
          <ChoicesOf store={store} toChoose={sharing} torn={sharing.torn.value} />
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
      {box && <KeysAndLeaving sharing={sharing} box={box} />}
    </>
  )
}
