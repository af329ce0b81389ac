import type { Sources } from '../catalog/sources'
import { OnDemand } from './question'

/** Where the figures of a catalog entry come from, on demand. */
export function EntrySources({
  entry,
}: {
  entry: { readonly name: string; readonly source: string; readonly sources?: Sources }
}) {
  const sources = Object.entries(entry.sources ?? {})
  return (
    <OnDemand title={`Where the figures of ${entry.name} come from`}>
      <p>{entry.source || 'No source is given.'}</p>
      {sources.length > 0 && (
        <dl class="sources">
          {sources.map(([quantity, source]) => (
            <div key={quantity}>
              <dt>{quantity}</dt>
              <dd>{source}</dd>
            </div>
          ))}
        </dl>
      )}
    </OnDemand>
  )
}
