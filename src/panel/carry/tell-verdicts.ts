import { effect, untracked } from '@preact/signals'
import type { Sharing } from '../../share/sharing'
import type { Store } from '../../state/store'
import { verdictNews } from '../../words/verdict-news'

/** Says which circuits stand otherwise after what others did. Returns how to stop. */
export function tellVerdicts(store: Store, sharing: Sharing): () => void {
  let told = sharing.taken.peek()
  let before = { plan: store.plan.peek(), circuits: store.report.peek().circuits }
  return effect(() => {
    const { circuits } = store.report.value
    untracked(() => {
      const plan = store.plan.peek()
      const taken = sharing.taken.peek()
      if (taken !== told) {
        told = taken
        sharing.tell(verdictNews(before, { plan, circuits }, taken, store.tongue.peek()))
      }
      before = { plan, circuits }
    })
  })
}
