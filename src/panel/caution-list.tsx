import type { Caution } from '../report/caution'
import type { Store } from '../state/store'
import { cautionText } from '../words/caution-words'
import { ShowPlace } from './show-place'

/** What could hurt someone, in the report's own words: first what holds for a place, then what holds everywhere. */
export function CautionList({ store, cautions }: { store: Store; cautions: readonly Caution[] }) {
  if (cautions.length === 0)
    return (
      <p>
        Nothing that is drawn yet. The local code governs all work on lines; where it asks for a licensed
        person, get one.
      </p>
    )
  const ordered = [...cautions.filter((each) => each.where), ...cautions.filter((each) => !each.where)]
  return (
    <ul class="cautions">
      {ordered.map((caution) => {
        const text = cautionText(caution, store.tongue.value)
        return (
          <li key={`${caution.code} ${caution.where} ${text}`}>
            {text}
            {caution.source && <span class="soft source"> Source: {caution.source}</span>}
            <ShowPlace store={store} where={caution.where} {...caution.place} />
          </li>
        )
      })}
    </ul>
  )
}
