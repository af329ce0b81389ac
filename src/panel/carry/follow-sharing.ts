import type { Store } from '../../state/store'
import type { Keeper } from '../../storage/keeper'
import { followWindows } from './follow-windows'

/** Joins the shared plan whose invitation the page's address carries, now and whenever another is put in, and goes on with shared plans of this browser. */
export function followSharing(store: Store, keeper: Keeper): void {
  let joining: Promise<void> | null = null
  const load = () => import('../../share/share')
  const join = async (fragment: string) => {
    // The address loses the keys: nobody reads them over a shoulder, nor takes them along with a bookmark.
    history.replaceState(history.state, '', location.pathname + location.search)
    const { joinByFragment } = await load()
    const said = await joinByFragment(store, fragment)
    if (said) store.notice.value = said
    else store.carrying.value = null
  }
  const look = () => {
    if (!location.hash.startsWith('#join=')) return
    joining = join(location.hash).finally(() => {
      joining = null
    })
  }
  let stopTelling = () => {}
  store.sharing.subscribe((sharing) => {
    stopTelling()
    stopTelling = () => {}
    keeper.shareDraft(sharing !== null)
    if (!sharing) return
    void import('./tell-verdicts').then(({ tellVerdicts }) => {
      if (store.sharing.peek() === sharing) stopTelling = tellVerdicts(store, sharing)
    })
  })
  look()
  addEventListener('hashchange', look)
  store.opened.subscribe((plan) => {
    if (joining || typeof plan.unknown?.plan?.shared !== 'string') return
    void load().then(({ resumeSharing }) => resumeSharing(store))
  })
  followWindows(store, keeper)
}
