import { useSignal } from '@preact/signals'
import { forbidsKeeping, mayKeep } from '../../state/keeping-allowed'
import { allowKeeping, type TileSource } from '../../state/online-tiles'
import type { Store } from '../../state/store'
import { KEEPING } from '../../storage/keeping-bounds'
import { formatCount } from '../../words/units'
import { Tick } from '../tick'
import { MapPart } from './map-part'

/** Keeps the part of an online map around the plan, where its terms allow that, as the person says. */
export function OnlinePart({ store, source }: { readonly store: Store; readonly source: TileSource }) {
  const isAllowed = useSignal(mayKeep(source))
  const keeper = store.mapsKeeper.value
  if (forbidsKeeping(source.url))
    return (
      <p>
        The tiles of this server are shown and never kept: its terms forbid to fetch them ahead. For use
        without a network, open a map archive.
      </p>
    )
  return (
    <>
      <Tick
        checked={isAllowed.value}
        onChange={(isTicked) => {
          isAllowed.value = isTicked
          allowKeeping(isTicked)
        }}
      >
        The terms of this source allow keeping its tiles
      </Tick>
      <p class="soft">
        Most terms forbid it: read those of your source first. What is kept carries its credit, and is seen
        with no network.
      </p>
      {isAllowed.value && keeper && (
        <MapPart
          store={store}
          name={source.credit || 'the online map'}
          isGuessed
          weigh={async (extent) => {
            const weights = await keeper.weighOnline(source, extent)
            return weights?.ok === false ? weights.problems[0]!.message : weights?.value
          }}
          keep={(extent, zooms) => void keeper.keepOnline(source, extent, zooms)}
          more={(tiles) =>
            `At ${KEEPING.tilesPerS} a second, so as not to burden the server, that takes about ${formatCount(Math.max(1, Math.round(tiles / KEEPING.tilesPerS / 60)), 'minute')}. At most ${KEEPING.mostTiles.toLocaleString('en')} tiles and ${KEEPING.mostBytes / 1e6} MB are kept.`
          }
        />
      )}
    </>
  )
}
