import './together.css'
import { useSignal } from '@preact/signals'
import { useEffect, useId, useMemo } from 'preact/hooks'
import { pictureOf } from '../../figure/code-picture'
import { placeOf } from '../../journal/keys'
import type { OtherHand, Sharing, TornProperty } from '../../share/sharing'
import type { Store } from '../../state/store'
import { propertyValueWords, propertyWords, thingWords } from '../../words/property-words'
import { ShowPlace } from '../show-place'
import { CarryDialog } from './carry-dialog'
import { LogOfSteps } from './log-of-steps'
import { standingWords } from './together-strip'

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
        {sharing ? <Shared store={store} sharing={sharing} /> : <Begin store={store} />}
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
        up when it is back.
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
  return (
    <>
      <p role="status">{standingWords(sharing)}.</p>
      {!sharing.mayWrite && <p>You read this plan: what you change stays on this screen alone.</p>}
      <label for={id}>Your name, as others read it</label>
      <input
        id={id}
        maxLength={40}
        value={sharing.name.value}
        onInput={(event) => {
          sharing.name.value = event.currentTarget.value
        }}
      />
      {sharing.torn.value.length > 0 && <ToChoose store={store} sharing={sharing} />}
      {sharing.said.value.length > 0 && (
        <section>
          <h2>What was mended or refused</h2>
          <ul>
            {sharing.said.value.map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
          <button type="button" onClick={sharing.putAway}>
            Understood
          </button>
        </section>
      )}
      {sharing.others.value.length > 0 && (
        <section>
          <h2>Who is here</h2>
          <ul>
            {sharing.others.value.map((other) => (
              <Other key={other.hand} store={store} other={other} />
            ))}
          </ul>
        </section>
      )}
      <Invite sharing={sharing} />
      <LogOfSteps store={store} sharing={sharing} />
      <KeysAndLeaving sharing={sharing} />
    </>
  )
}

/** Shapes that are told apart without colour. */
const SIGNS = ['●', '▲', '■', '◆', '★', '✚', '○', '△', '□', '◇']

function signOf(hand: string): string {
  let sum = 0
  for (const letter of hand) sum = (sum * 31 + letter.charCodeAt(0)) % 9973
  return SIGNS[sum % SIGNS.length]!
}

function Other({ store, other }: { store: Store; other: OtherHand }) {
  const place = other.at ? placeOf(other.at) : undefined
  return (
    <li>
      <span class="sign" aria-hidden="true">
        {signOf(other.hand)}
      </span>
      <bdi>{other.name || 'Somebody'}</bdi>
      {other.at && <> — last at {thingWords(store.plan.value, other.at)}</>}{' '}
      {place && <ShowPlace store={store} where={place.id} />}
    </li>
  )
}

function ToChoose({ store, sharing }: { store: Store; sharing: Sharing }) {
  return (
    <section>
      <h2>Set differently by several: choose</h2>
      {sharing.torn.value.map((each) => (
        <Torn key={each.key} store={store} sharing={sharing} torn={each} />
      ))}
    </section>
  )
}

function Torn({ store, sharing, torn }: { store: Store; sharing: Sharing; torn: TornProperty }) {
  const plan = store.plan.value
  const words = propertyWords(plan, torn.key)
  return (
    <fieldset>
      <legend>
        {words} <ShowPlace store={store} where={placeOf(torn.key)?.id ?? ''} />
      </legend>
      <div class="choices-of">
        {torn.choices.map((choice, index) => (
          <button
            key={`${choice.who} ${choice.atMs}`}
            type="button"
            disabled={!sharing.mayWrite}
            onClick={() => sharing.choose(torn.key, choice.value)}
          >
            {propertyValueWords(plan, torn.key, choice.value)}
            <br />
            <span class="soft">
              <bdi>{choice.who}</bdi>, {new Date(choice.atMs).toLocaleTimeString()}
              {index === 0 ? ', holds now' : ''}
            </span>
          </button>
        ))}
      </div>
    </fieldset>
  )
}

function Invite({ sharing }: { sharing: Sharing }) {
  const mayWrite = useSignal(sharing.mayWrite)
  const isShown = useSignal(false)
  const said = useSignal('')
  const link = sharing.invitation(mayWrite.value)
  const picture = useMemo(() => (isShown.value ? pictureOf(link, 40) : null), [link, isShown.value])
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(link)
      said.value = 'The invitation is copied.'
    } catch {
      said.value = 'The browser does not let the program copy: mark the invitation and copy it yourself.'
    }
  }
  return (
    <section>
      <h2>Invite</h2>
      {sharing.mayWrite && (
        <label>
          <input
            type="checkbox"
            checked={mayWrite.value}
            onChange={(event) => {
              mayWrite.value = event.currentTarget.checked
            }}
          />{' '}
          They may change the plan
        </label>
      )}
      <label>
        The invitation: whoever has it has the key
        <input readOnly value={link} onFocus={(event) => event.currentTarget.select()} />
      </label>
      {/\/\/(localhost|127\.)/.test(link) && (
        <p class="soft">
          This page was opened as “{location.host}”, which only this machine reaches: open it by the other
          address that <code>npm run share</code> printed before you invite.
        </p>
      )}
      <div class="acts">
        <button type="button" onClick={() => void copy()}>
          Copy the invitation
        </button>
        <button
          type="button"
          aria-expanded={isShown.value}
          onClick={() => {
            isShown.value = !isShown.value
          }}
        >
          {isShown.value ? 'Hide the code' : 'Show it as a code'}
        </button>
      </div>
      <p role="status">{said.value}</p>
      {picture && (
        <svg
          class="code"
          viewBox={`0 0 ${picture.side} ${picture.side}`}
          role="img"
          aria-label="Code of the invitation"
        >
          <path d={picture.path} shape-rendering="crispEdges" />
        </svg>
      )}
    </section>
  )
}

function KeysAndLeaving({ sharing }: { sharing: Sharing }) {
  const isAsked = useSignal(false)
  return (
    <section>
      <h2>Keys</h2>
      {isAsked.value ? (
        <>
          <p>
            The plan gets new keys and goes on under them. Whoever has the old invitation hears nothing any
            more and can change nothing here; whoever is to stay must be invited anew.
          </p>
          <div class="acts">
            <button type="button" onClick={() => void sharing.changeKeys()}>
              Give it new keys
            </button>
            <button
              type="button"
              onClick={() => {
                isAsked.value = false
              }}
            >
              Keep the old ones
            </button>
          </div>
        </>
      ) : (
        <div class="acts">
          {sharing.mayWrite && (
            <button
              type="button"
              onClick={() => {
                isAsked.value = true
              }}
            >
              Shut somebody out…
            </button>
          )}
          <button type="button" onClick={sharing.leave}>
            Stop sharing on this screen
          </button>
        </div>
      )}
    </section>
  )
}
