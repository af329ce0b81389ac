import { sourceAt } from '../../catalog/sources'
import type { Store } from '../../state/store'
import { unitOf } from '../../words/units'
import { OnDemand } from '../question'
import { type Entry, FIGURES, labelWords, valueAt } from './entry-figures'

/** Every figure of a catalog entry and where it comes from, on demand. */
export function EntrySources({ store, entry }: { store: Store; entry: Entry }) {
  const figures = FIGURES.flatMap(({ at, label, quantity }) => {
    const value = valueAt(entry, at)
    if (typeof value !== 'number') return []
    const unit = unitOf(quantity, store.units.value)
    return [
      {
        at,
        label,
        text: `${figureText(unit.fromSi(value))} ${unit.sign}`,
        source: sourceAt(entry.sources, at)?.says,
      },
    ]
  })
  return (
    <OnDemand title={`${entry.name}: figures and sources`}>
      <p class="source">{entry.source || 'No source is given.'}</p>
      <dl class="sources">
        {figures.map(({ at, label, text, source }) => (
          <div key={at}>
            <dt>
              {labelWords(label, store.tongue.value)}: {text}
            </dt>
            <dd class="source">{source}</dd>
          </div>
        ))}
      </dl>
    </OnDemand>
  )
}

/** Four figures that count: no handbook gives more. */
const figureText = (value: number): string => String(Number(value.toPrecision(4)))
