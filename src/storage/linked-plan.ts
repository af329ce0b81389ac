import { type Carried, carriedOfFragment } from '../files/carry/carried'
import type { Problem } from '../problem'

/** The parts of the store that a link fills. */
export interface LinkStore {
  readonly received: { value: Carried | null }
  readonly refusedFile: { value: { readonly name: string; readonly problems: readonly Problem[] } | null }
}

/** Takes the plan that the page's address carries, now and whenever another address is put in. The address loses it: a reload brings nothing anew. */
export function takeLinkedPlan(store: LinkStore): void {
  const take = () => {
    const result = carriedOfFragment(location.hash)
    if (!result) return
    history.replaceState(history.state, '', location.pathname + location.search)
    if (result.ok) store.received.value = result.value
    else store.refusedFile.value = { name: 'the link', problems: result.problems }
  }
  take()
  addEventListener('hashchange', take)
}
