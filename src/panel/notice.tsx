import type { Store } from '../state/store'

/** What the person must be told, until they put it away. */
export function Notice({ store }: { store: Store }) {
  return (
    <div class="notice-place" role="status">
      {store.notice.value && (
        <div class="notice">
          <span>{store.notice.value}</span>
          <button
            type="button"
            onClick={() => {
              store.notice.value = ''
            }}
          >
            Understood
          </button>
        </div>
      )}
    </div>
  )
}
