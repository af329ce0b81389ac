import { isolated } from '../../isolated'
import type { OwnJournal } from '../../share/own-journal'
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
    else {
      store.carrying.value = null
      store.notice.value = joinedWords(store)
    }
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
  store.ownJournal.value = lateJournal(store, keeper)
  followWindows(store, keeper)
}

/** What a newcomer needs to know: whether one may change the plan, and where one's own is. */
function joinedWords({ sharing, plan }: Store): string {
  const title = isolated(plan.peek().title)
  return sharing.peek()?.mayWrite
    ? `You are at the shared plan “${title}”: what you change comes to all. Press the strip on the map to give your name. Your own plans are under Plans.`
    : `You read the shared plan “${title}” as it changes, and cannot change it for others. Your own plans are under Plans.`
}

/** The journal of a plan that nobody shares: it comes when a file or a link needs it. */
function lateJournal(store: Store, keeper: Keeper): OwnJournal {
  let loading: Promise<OwnJournal> | undefined
  let loaded: OwnJournal | undefined
  const load = () => {
    const name = `fieldpair journals ${new URL('.', location.href).pathname}`
    loading ??= import('../../share/own-journal').then(({ ownJournal }) => {
      loaded = ownJournal(store, name, keeper.openDoc)
      return loaded
    })
    return loading
  }
  return {
    takeBrought: () => loaded?.takeBrought() ?? null,
    upToNow: async (mayBegin) => (await load()).upToNow(mayBegin),
    keep: async (journal) => (await load()).keep(journal),
    filePlan: async () => (await load()).filePlan(),
    carried: async (plan, hasRoom) => (await load()).carried(plan, hasRoom),
    takeFile: async (read) =>
      read.unknown?.file?.journal === undefined ? false : (await load()).takeFile(read),
  }
}
