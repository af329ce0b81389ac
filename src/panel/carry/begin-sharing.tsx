import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { sharedTagOf } from '../../share/shared-tag'
import type { Store } from '../../state/store'

/** How a plan comes to be shared: over the box that served this page, where one did. */
export function BeginSharing({ store }: { store: Store }) {
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
  const again = async () => {
    const { shareAgain } = await import('../../share/share')
    said.value = await shareAgain(store)
  }
  if (isOnBox.value === null) return <p role="status">Looking for a box …</p>
  if (!isOnBox.value) return <NoBox />
  const wasShared = sharedTagOf(store.settled.value) !== undefined
  return (
    <>
      {wasShared && (
        <>
          <p>
            You work on a shared plan alone. Shared again, what you changed meanwhile goes to the others, and
            what they changed comes here; what you and they set differently stands side by side to be chosen.
          </p>
          <div class="acts">
            <button type="button" onClick={() => void again()}>
              Share it again
            </button>
          </div>
          <p>Or share it anew, as a plan of its own with a new invitation:</p>
        </>
      )}
      {!wasShared && <p>Several can change this plan at the same time, each on a screen of their own.</p>}
      <ul class="points">
        <li>
          <strong>Who:</strong> whoever has the invitation that you get next, as a link or a code. It lets
          people change the plan, or only read it.
        </li>
        <li>
          <strong>How:</strong> the box that this page came from carries what each does to all others. They
          must reach its network. Out of reach everybody works on; what they did comes together later.
        </li>
        <li>
          <strong>What the box knows:</strong> nothing of what is in the plan. It keeps sealed steps on its
          disk, and the key is in the invitation alone.
        </li>
        {store.grids.value.some(({ isKept }) => isKept) && (
          <li>
            <strong>What stays here:</strong> your elevation files. Whoever has none reads other lengths: hand
            them on too, or the plan’s file from “Save with its elevations…”.
          </li>
        )}
        <li>
          <strong>The end:</strong> whoever stops keeps the plan as it is then. You can shut others out.
        </li>
      </ul>
      <div class="acts">
        <button type="button" onClick={() => void begin()}>
          Share over this box
        </button>
      </div>
      <p role="status">{said.value}</p>
    </>
  )
}

const NoBox = () => (
  <>
    <p>
      To change a plan together, one machine must be the box: it serves this program to the others and carries
      their steps. This page does not come from one, or the box is not reached now.
    </p>
    <ol>
      <li>
        On the machine that is to be the box, run <code>npm run share</code> in the program’s folder.
      </li>
      <li>
        Open the address that it prints, on any device in its network, and take this plan there as a file.
      </li>
      <li>Come back to this place in the menu, and share it.</li>
    </ol>
    <p class="soft">With no box, “Hand the plan on…” and files take a plan from one to another.</p>
  </>
)
