import type { ComponentChildren } from 'preact'
import { useEffect, useErrorBoundary } from 'preact/hooks'
import { whyOf } from '../jobs/protocol'
import type { Store } from '../state/store'
import { WaysOut } from './failure-banner'

interface Props {
  readonly store: Store
  /** What stands here, as the subject of a sentence: `The side panel`. */
  readonly what: string
  readonly onClose?: () => void
  readonly children: ComponentChildren
}

/** A part of the page that may break without taking the rest with it. It is drawn anew after the next edit or selection. */
export function Fallible({ store, what, onClose, children }: Props) {
  const [error, reset] = useErrorBoundary((thrown: unknown) => console.error(thrown))
  const plan = store.plan.value
  const selection = store.selection.value
  useEffect(() => {
    if (error) reset()
  }, [plan, selection])
  if (!error) return <>{children}</>
  return (
    <section class="failure broken" role="alert">
      <p>{`${what} could not be shown (${whyOf(error)}). The plan itself is kept.`}</p>
      <WaysOut store={store}>
        <button type="button" onClick={reset}>
          Try again
        </button>
        {onClose && (
          <button type="button" onClick={onClose}>
            Close
          </button>
        )}
      </WaysOut>
    </section>
  )
}
