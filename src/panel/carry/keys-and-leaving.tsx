import { useSignal } from '@preact/signals'
import type { BoxSide, Sharing } from '../../share/sharing'
import type { Store } from '../../state/store'
import { formatCount } from '../../words/units'

/** Shutting somebody out by other keys, and going on alone. */
export function KeysAndLeaving({ store, sharing, box }: { store: Store; sharing: Sharing; box: BoxSide }) {
  const asked = useSignal<'' | 'keys' | 'stop'>('')
  const ask = (what: '' | 'keys' | 'stop') => () => {
    asked.value = what
  }
  const stop = async () => {
    await box.stop()
    store.notice.value = `You work on alone now, with the plan as it is. What you change stays on this screen${sharing.mayWrite ? ' until you share it again' : ''}.`
  }
  return (
    <section>
      <h2>{sharing.mayWrite ? 'Shut out, or stop' : 'Stop'}</h2>
      {asked.value === 'keys' && (
        <>
          <p>
            The plan gets new keys and goes on under them. Whoever has the old invitation hears nothing any
            more and can change nothing here; whoever is to stay needs a new invitation from you. All keep the
            plan as they have it now. Until the box’s folder is cleared the old state lies there, sealed:
            whoever has the old invitation can read it, as it was until now.
          </p>
          <div class="acts">
            <button type="button" onClick={() => void box.changeKeys()}>
              Give it new keys
            </button>
            <button type="button" onClick={ask('')}>
              Keep the old ones
            </button>
          </div>
        </>
      )}
      {asked.value === 'stop' && (
        <>
          <p>{stopWords(sharing, box)}</p>
          <div class="acts">
            <button type="button" onClick={() => void stop()}>
              Work on alone
            </button>
            <button type="button" onClick={ask('')}>
              Go on together
            </button>
          </div>
        </>
      )}
      {asked.value === '' && (
        <div class="acts">
          {sharing.mayWrite && box.standing.value === 'together' && (
            <button type="button" onClick={ask('keys')}>
              Shut somebody out…
            </button>
          )}
          <button type="button" onClick={ask('stop')}>
            Stop sharing on this screen…
          </button>
        </div>
      )}
    </section>
  )
}

function stopWords({ mayWrite }: Sharing, { waiting }: BoxSide): string {
  const keeps = 'The plan stays on this screen as it is now, as your own. The others go on without you.'
  if (!mayWrite) return `${keeps} What they change then comes here when you open the invitation again.`
  const left =
    waiting.value > 0
      ? ` ${formatCount(waiting.value, 'step')} of yours ${waiting.value === 1 ? 'has' : 'have'} not come to them yet.`
      : ''
  return `${keeps}${left} “Share it again”, here, later takes along to them what you changed meanwhile, and brings theirs.`
}
