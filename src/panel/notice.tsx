import { useSignal } from '@preact/signals'
import type { Store } from '../state/store'
import { savePlanFile } from '../storage/save-plan-file'

/** What the person must be told, until they put it away; and that changes are not kept, until they are or are in a file. */
export function Notice({ store }: { store: Store }) {
  const putAway = useSignal('')
  const { notKept, notice } = store
  const isInFile = store.inFile.value === store.settled.value
  return (
    <div class="notice-place" role="status">
      {notKept.value && notKept.value !== putAway.value && !isInFile && (
        <div class="notice">
          <span>{notKept.value}</span>
          <button type="button" onClick={() => void savePlanFile(store)}>
            Save as a file…
          </button>
          <button
            type="button"
            onClick={() => {
              putAway.value = notKept.value
            }}
          >
            Understood
          </button>
        </div>
      )}
      {notice.value && (
        <div class="notice">
          <span>{notice.value}</span>
          <button
            type="button"
            onClick={() => {
              notice.value = ''
            }}
          >
            Understood
          </button>
        </div>
      )}
    </div>
  )
}
