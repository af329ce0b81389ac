import { useSignal } from '@preact/signals'
import { useMemo } from 'preact/hooks'
import { pictureOf } from '../../figure/code-picture'
import type { BoxSide } from '../../share/sharing'
import { Tick } from '../tick'

/** The invitation, as an address and as a code. */
export function Invite({ box, mayInviteToWrite }: { box: BoxSide; mayInviteToWrite: boolean }) {
  const mayWrite = useSignal(mayInviteToWrite)
  const isShown = useSignal(false)
  const said = useSignal('')
  const link = box.invitation(mayWrite.value)
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
      {mayInviteToWrite && (
        <Tick
          checked={mayWrite.value}
          onChange={(isTicked) => {
            mayWrite.value = isTicked
          }}
        >
          They may change the plan, and invite others to
        </Tick>
      )}
      <p class="soft">
        {mayWrite.value
          ? 'Whoever has this invitation can read and change the plan.'
          : 'Whoever has this invitation can read the plan, and change nothing.'}{' '}
        Send the link, or let a phone’s camera read the code. The device must be in the box’s network.
      </p>
      <label>
        The invitation
        <input readOnly value={link} onFocus={(event) => event.currentTarget.select()} />
      </label>
      {/\/\/(localhost|127\.)/.test(link) && (
        <p class="soft">
          This link works on this machine alone, for the page was opened as “{location.hostname}”. Open the
          program by the other address that <code>npm run share</code> printed, share from there, and invite.
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
