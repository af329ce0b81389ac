import type { Carrier } from '../../share/carrier'
import type { WindowWord } from '../../share/window-words'
import type { Store } from '../../state/store'
import type { Keeper } from '../../storage/keeper'

/** How often, and how long, the keys of a plan that another window has begun to share are looked for, ms. */
const LOOK_MS = 500
const LOOKS = 20

/**
 * Lets the windows of this browser that have one kept plan on the table work on it together, with no server: whoever opens it says so, and
 * whoever has it answers with its journal. Where a browser has no way between windows, each keeps a draft of its own.
 */
export function followWindows(store: Store, keeper: Pick<Keeper, 'openKey'>, over?: Carrier): void {
  if (typeof BroadcastChannel === 'undefined') return
  const channel = new BroadcastChannel(`fieldpair windows ${new URL('.', location.href).pathname}`)
  const say = (word: WindowWord) => channel.postMessage(word)
  const isShared = () =>
    store.sharing.peek()?.box != null || store.settled.peek().unknown?.plan?.shared !== undefined
  /** The plan that this window and the others had alike: as it was opened, or as it was when it was last heard by them. */
  let base = store.opened.peek()
  const greet = () => {
    const key = keeper.openKey()
    if (key !== null && !isShared()) say({ is: 'hello', key })
  }
  const load = () => import('../../share/windows')
  store.opened.subscribe((opened) => {
    base = opened
    greet()
  })

  let turn = Promise.resolve()
  const hear = async (word: WindowWord) => {
    if (word.is === 'moved') return void resume(word.tag, word.plan)
    if (word.is !== 'hello' && word.is !== 'begin') return
    if (word.key !== keeper.openKey() || isShared()) return
    const { windowsPlan } = await load()
    if (word.key !== keeper.openKey() || isShared()) return
    const now = store.sharing.peek()
    if (word.is === 'hello') {
      const mine = now ? null : windowsPlan(store, say, channel, null)
      if (mine) store.sharing.value = mine
      const begin = (mine ?? now)?.begin?.()
      if (begin) say({ is: 'begin', key: word.key, ...begin })
    } else {
      if (now && !(now.giveWayTo?.(word) ?? false)) return
      now?.leave()
      store.sharing.value = windowsPlan(store, say, channel, { ...word, base })
    }
  }
  channel.addEventListener('message', ({ data }) => {
    turn = turn.then(() => hear(data as WindowWord)).catch(() => undefined)
  })

  let isResuming = false
  /**
   * Another window shares the plan over a box now: this one joins it there, as soon as the keys are kept in this browser. What that window
   * did not know of yet, this one has done on top of it.
   */
  const resume = async (tag: string, text: string) => {
    if (isResuming) return
    isResuming = true
    const { parsePlan } = await import('../../files/parse-plan')
    const known = parsePlan(text)
    for (let left = LOOKS; left > 0 && !store.sharing.peek()?.box; left--) {
      if (!store.dragging.peek()) {
        store.sharing.peek()?.absorbNow()
        if (known.ok && store.settled.peek().unknown?.plan?.shared === tag) {
          const { resumeSharing } = await import('../../share/share')
          await resumeSharing(store, known.value, over)
        }
      }
      await new Promise((done) => setTimeout(done, LOOK_MS))
    }
    isResuming = false
  }
  addEventListener('pagehide', () => {
    if (store.sharing.peek()?.box !== null) return
    base = store.settled.peek()
    store.sharing.peek()?.leave()
  })
  addEventListener('pageshow', ({ persisted }) => {
    if (persisted) greet()
  })
}
