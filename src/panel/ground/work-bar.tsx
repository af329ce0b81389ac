import type { Store } from '../../state/store'
import './ground.css'

/** Long work under way: what it is, how far it is, and a way to stop it. */
export function WorkBar({ store }: { store: Store }) {
  const work = store.work.value
  return (
    <div class="work-place" role="status">
      {work && (
        <div class="work">
          <span id="work-words">{work.words}</span>
          <progress aria-labelledby="work-words" max={1} value={work.done} />
          <button type="button" onClick={work.stop}>
            Stop
          </button>
        </div>
      )}
    </div>
  )
}
