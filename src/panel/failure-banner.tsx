import type { Store } from '../state/store'
import { mendRelease } from '../storage/keep-release'
import { savePlanFile } from '../storage/save-plan-file'
import './failure.css'

/** What went wrong, in a sentence, and the ways to lose nothing by it. */
export function FailureBanner({ store }: { store: Store }) {
  const { reportFailure, failure } = store
  return (
    <div class="failure-place" role="alert">
      {reportFailure.value && (
        <div class="failure">
          <p>{reportFailure.value}</p>
          <WaysOut store={store} />
        </div>
      )}
      {failure.value && (
        <div class="failure">
          <p>{failure.value}</p>
          <WaysOut store={store}>
            <button type="button" onClick={mendRelease}>
              Load the program anew
            </button>
            <button
              type="button"
              onClick={() => {
                failure.value = ''
              }}
            >
              Understood
            </button>
          </WaysOut>
        </div>
      )}
    </div>
  )
}

/** Undo and save: what is offered wherever something broke. */
export function WaysOut({ store, children }: { store: Store; children?: preact.ComponentChildren }) {
  return (
    <div class="acts">
      <button type="button" disabled={!store.canUndo.value} onClick={store.undo}>
        Undo
      </button>
      <button type="button" onClick={() => void savePlanFile(store)}>
        Save the plan as a file…
      </button>
      {children}
    </div>
  )
}
