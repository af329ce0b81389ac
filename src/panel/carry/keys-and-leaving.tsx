import { useSignal } from '@preact/signals'
import type { BoxSide, Sharing } from '../../share/sharing'

/** Shutting somebody out by other keys, and leaving. */
export function KeysAndLeaving({ sharing, box }: { sharing: Sharing; box: BoxSide }) {
  const isAsked = useSignal(false)
  return (
    <section>
      <h2>Keys</h2>
      {isAsked.value ? (
        <>
          <p>
            The plan gets new keys and goes on under them. Whoever has the old invitation hears nothing any
            more and can change nothing here; whoever is to stay must be invited anew. Until the box’s folder
            is cleared the old state lies there, sealed: whoever has the old invitation can read it, as it was
            until now.
          </p>
          <div class="acts">
            <button type="button" onClick={() => void box.changeKeys()}>
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
