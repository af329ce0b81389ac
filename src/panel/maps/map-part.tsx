import { useSignal } from '@preact/signals'
import { undirected } from '../../isolated'
import type { PartWeight } from '../../jobs/maps/maps-answers'
import type { BackMap, MapsKeeper } from '../../state/maps-state'
import type { Store } from '../../state/store'
import { planExtent } from '../../terrain/plan-extent'
import { formatBytes } from '../../words/ground-words'
import { formatCount } from '../../words/units'
import { OnDemand } from '../question'
import { SelectField } from '../select-field'

interface Props {
  readonly store: Store
  readonly keeper: MapsKeeper
  readonly map: BackMap
}

/** What the part of an archive around the plan weighs, and the way to keep only that. */
export function MapPart({ store, keeper, map }: Props) {
  const levels = useSignal<readonly PartWeight[] | 'asked' | 'unknown' | null>(null)
  const upTo = useSignal<number | null>(null)
  const extent = planExtent(store.plan.value)
  const weigh = async () => {
    if (!extent) return
    levels.value = 'asked'
    levels.value = (await keeper.weigh(map.key, extent)) ?? 'unknown'
  }
  const found = typeof levels.value === 'object' ? levels.value : null
  const deepest = found?.findLast(({ tiles }) => tiles > 0)?.zoom ?? 0
  const zoom = upTo.value ?? deepest
  const within = found?.filter((level) => level.zoom <= zoom) ?? []
  const sum = (of: 'tiles' | 'bytes') => within.reduce((total, level) => total + level[of], 0)
  return (
    <OnDemand title="Only the part around the plan">
      {!extent && <p>There is no plan yet that it could lie around.</p>}
      {extent && !found && (
        <div class="acts">
          <button type="button" disabled={levels.value === 'asked'} onClick={() => void weigh()}>
            How large is it?
          </button>
        </div>
      )}
      {levels.value === 'unknown' && <p role="alert">That part has too many tiles to be kept.</p>}
      {found && (
        <>
          <SelectField
            label="As near as"
            value={String(zoom)}
            options={found
              .filter(({ tiles }) => tiles > 0)
              .map((level) => ({ value: String(level.zoom), text: `zoom ${level.zoom}` }))}
            onCommit={(value) => {
              upTo.value = Number(value)
            }}
          />
          <p role="status">
            {formatCount(sum('tiles'), 'tile')}, {formatBytes(sum('bytes'))}.
          </p>
          <div class="acts">
            <button
              type="button"
              disabled={sum('tiles') === 0}
              aria-label={`Keep this part of ${undirected(map.name)}`}
              onClick={() => extent && void keeper.keepPart(map.key, extent, zoom)}
            >
              Keep this part ({formatBytes(sum('bytes'))})
            </button>
          </div>
        </>
      )}
    </OnDemand>
  )
}
