import { effect } from '@preact/signals'

/** Something that can lie open over the rest. */
interface Layer {
  readonly isOpen: () => boolean
  readonly close: () => void
}

/** Set once the page is being left for another: going back in the history would call that off. */
let isGoing = false

/** Opens another page in the place of this one. */
export function goTo(address: string): void {
  isGoing = true
  location.assign(address)
}

/**
 * Lets the browser's Back close what is open, the uppermost first, before it leaves the page: while anything is open the history
 * has an entry of ours on top. Returns the undoing of itself.
 */
export function followBack(layers: readonly Layer[]): () => void {
  let isGuarded = false
  /** An entry that is no longer needed is being left: what comes of that is no wish of the person. */
  let isLeaving = false
  const anyOpen = () => layers.filter((layer) => layer.isOpen()).length > 0
  const guard = () => {
    history.pushState({ open: true }, '')
    isGuarded = true
  }
  const stop = effect(() => {
    if (anyOpen()) {
      if (!isGuarded && !isLeaving) guard()
    } else if (isGuarded && !isGoing) {
      isGuarded = false
      isLeaving = true
      history.back()
    }
  })
  const onBack = () => {
    if (isLeaving) {
      isLeaving = false
      if (anyOpen()) guard()
      return
    }
    isGuarded = false
    layers.find((layer) => layer.isOpen())?.close()
    if (anyOpen() && !isGuarded) guard()
  }
  addEventListener('popstate', onBack)
  return () => {
    stop()
    removeEventListener('popstate', onBack)
  }
}
