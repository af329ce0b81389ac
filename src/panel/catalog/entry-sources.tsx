import { valueAt } from '../../catalog/entry-value'
import { tallyOf } from '../../catalog/source-tally'
import { withSources } from '../../catalog/sourced'
import { restsOnMemory, sourceAt } from '../../catalog/sources'
import { isolated } from '../../isolated'
import type { Store } from '../../state/store'
import { sourceKind, spreadText, tallySentence } from '../../words/source-words'
import { unitOf } from '../../words/units'
import { OnDemand } from '../question'
import { type Entry, FIGURES, labelWords } from './entry-figures'

/** Every figure of a catalog entry, how it is known, how far real things lie from it, and where all this comes from; on demand. */
export function EntrySources({ store, entry: shown }: { store: Store; entry: Entry }) {
  const entry = withSources(shown)
  const figures = FIGURES.flatMap(({ at, label, quantity }) => {
    const value = valueAt(entry, at)
    if (typeof value !== 'number') return []
    const unit = unitOf(quantity, store.units.value)
    const source = sourceAt(entry.sources, at)
    const pct = entry.spread?.[at]
    return [
      {
        at,
        label,
        text: `${figureText(unit.fromSi(value))} ${unit.sign}${pct ? `, ${spreadText(pct)}` : ''}`,
        kind: sourceKind(source),
        onMemory: restsOnMemory(source),
        says: source?.says,
        spreadSays: pct ? sourceAt(entry.sources, `spread.${at}`)?.says : undefined,
      },
    ]
  })
  return (
    <OnDemand title={`${isolated(entry.name)}: figures and sources`}>
      <p class="source">{entry.source || 'No source is given.'}</p>
      <p class="quiet">{tallySentence(tallyOf([entry]))}</p>
      <dl class="sources">
        {figures.map(({ at, label, text, kind, onMemory, says, spreadSays }) => (
          <div key={at}>
            <dt>
              {labelWords(label, store.tongue.value)}: {text}{' '}
              {kind && <span class={onMemory ? 'source-kind on-memory' : 'source-kind'}>{kind}</span>}
            </dt>
            <dd class="source">
              {says} {spreadSays && <>Spread: {spreadSays}</>}
            </dd>
          </div>
        ))}
      </dl>
    </OnDemand>
  )
}

/** Four figures that count: no handbook gives more. */
const figureText = (value: number): string => String(Number(value.toPrecision(4)))
