import type { Doubt } from '../report/doubts'
import type { Store } from '../state/store'
import { doubtText } from '../words/doubt-words'
import { Question } from './question'
import { ShowPlace } from './show-place'

/** What can hardly be meant, as questions to the person; nothing where there is no doubt. */
export function Doubts({ store, doubts }: { store: Store; doubts: readonly Doubt[] }) {
  if (doubts.length === 0) return null
  return (
    <Question ask="Is this meant?">
      <ul class="cautions">
        {doubts.slice(0, LISTED).map((doubt) => {
          const text = doubtText(doubt, store.tongue.value)
          return (
            <li key={`${doubt.code} ${doubt.where} ${text}`}>
              {text}
              <ShowPlace
                store={store}
                where={doubt.where}
                {...('legIndex' in doubt && { legIndex: doubt.legIndex })}
                {...(doubt.position && { position: doubt.position })}
              />
            </li>
          )
        })}
      </ul>
      {doubts.length > LISTED && <p>And {doubts.length - LISTED} more of the kind.</p>}
    </Question>
  )
}

/** More than this nobody looks through: what makes one makes most of them. */
const LISTED = 20
