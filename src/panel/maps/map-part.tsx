import { useSignal } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import type { PartWeight } from '../../jobs/maps/maps-answers'
import type { Store } from '../../state/store'
import type { Extent } from '../../terrain/elevation-grid'
import { planExtent } from '../../terrain/plan-extent'
import { formatBytes } from '../../words/ground-words'
import { formatCount } from '../../words/units'
import { OnDemand } from '../question'
import { SelectField } from '../select-field'

interface Props {
  readonly store: Store
  /** Whose part it is, for those who hear the page. */
  readonly name: string
  /** What the part weighs, level by level; a sentence where that cannot be told, undefined where nobody wants it any more. */
  readonly weigh: (extent: Extent) => Promise<readonly PartWeight[] | string | undefined>
  readonly keep: (extent: Extent, zooms: readonly number[]) => void
  /** Its bytes are guessed. */
  readonly isGuessed?: boolean
  /** What else is to be known of so many tiles before they are taken. */
  readonly more?: (tiles: number) => ComponentChildren
}

/** What the part of a map around the plan weighs, and the way to keep only that. */
export function MapPart({ store, name, weigh, keep, isGuessed = false, more }: Props) {
  const levels = useSignal<readonly PartWeight[] | 'asked' | null>(null)
  const refusal = useSignal('')
  const upTo = useSignal<number | null>(null)
  const extent = planExtent(store.plan.value)
  const ask = async () => {
    if (!extent) return
    levels.value = 'asked'
    refusal.value = ''
    const found = await weigh(extent)
    levels.value = typeof found === 'object' ? found : null
    if (typeof found === 'string') refusal.value = found
  }
  const found = typeof levels.value === 'object' ? levels.value : null
  const deepest = found?.findLast(({ tiles }) => tiles > 0)?.zoom ?? 0
  const zoom = upTo.value ?? deepest
  const within = found?.filter((level) => level.zoom <= zoom && level.tiles > 0) ?? []
  const sum = (of: 'tiles' | 'bytes') => within.reduce((total, level) => total + level[of], 0)
  const about = isGuessed ? 'about ' : ''
  return (
    <OnDemand title="Only the part around the plan">
      {!extent && <p>There is no plan yet that it could lie around.</p>}
      {extent && !found && (
        <div class="acts">
          <button type="button" disabled={levels.value === 'asked'} onClick={() => void ask()}>
            How large is it?
          </button>
        </div>
      )}
      {refusal.value && <p role="alert">{refusal.value}</p>}
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
            {formatCount(sum('tiles'), 'tile')}, {about}
            {formatBytes(sum('bytes'))}.{more && <> {more(sum('tiles'))}</>}
          </p>
          <div class="acts">
            <button
              type="button"
              disabled={sum('tiles') === 0}
              aria-label={`Keep this part of ${name}`}
              onClick={() =>
                extent &&
                keep(
                  extent,
                  within.map((level) => level.zoom),
                )
              }
            >
              Keep this part ({about}
              {formatBytes(sum('bytes'))})
            </button>
          </div>
        </>
      )}
    </OnDemand>
  )
}
