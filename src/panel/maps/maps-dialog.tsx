import './maps.css'
import { isolated, undirected } from '../../isolated'
import { MAP_ENDINGS } from '../../jobs/maps/map-spec'
import type { BackMap, MapsKeeper } from '../../state/maps-state'
import { requestPlace } from '../../state/requests'
import type { Store } from '../../state/store'
import { chooseFiles } from '../../storage/choose-files'
import { formatBytes, shiftWords } from '../../words/ground-words'
import { CarryDialog } from '../carry/carry-dialog'
import { OnDemand } from '../question'
import { TileServer } from '../tile-server'
import { MapPart } from './map-part'
import { OnlinePart } from './online-part'

const KIND_WORDS: Readonly<Record<BackMap['kind'], string>> = {
  pmtiles: 'PMTiles',
  mbtiles: 'MBTiles',
  geotiff: 'GeoTIFF',
  picture: 'fitted picture',
}

/** The maps beneath the net: which, in what order, how strong, and which of them this browser keeps. */
export function MapsDialog({ store }: { store: Store }) {
  const keeper = store.mapsKeeper.value
  const maps = [...store.maps.value].reverse()
  const close = () => {
    store.mapsAreOpen.value = false
  }
  return (
    <CarryDialog title="Maps beneath the net" onClose={close} letsMapShow>
      <p>
        A map archive (PMTiles or MBTiles) and a GeoTIFF picture lie where they belong. A photograph or scan
        of a map is laid there by three marks or more. None of them needs a network.
      </p>
      <div class="acts">
        <button
          type="button"
          disabled={!keeper}
          onClick={() => chooseFiles(MAP_ENDINGS, (files) => void keeper?.add(files))}
        >
          Open a map…
        </button>
      </div>
      {keeper && maps.length > 0 && (
        <ol class="map-list" aria-label="Maps, the topmost first">
          {maps.map((map, i) => (
            <MapRow
              key={map.key}
              store={store}
              keeper={keeper}
              map={map}
              isTopmost={i === 0}
              isLowest={i === maps.length - 1}
            />
          ))}
        </ol>
      )}
      <TileServer use="map" whileOn={(source) => <OnlinePart store={store} source={source} />} />
      <Sources />
    </CarryDialog>
  )
}

interface RowProps {
  readonly store: Store
  readonly keeper: MapsKeeper
  readonly map: BackMap
  readonly isTopmost: boolean
  readonly isLowest: boolean
}

function MapRow({ store, keeper, map, isTopmost, isLowest }: RowProps) {
  const { key, facts, sizeBytes, isShown, opacity, isKept } = map
  const name = isolated(facts?.title || map.name)
  const goThere = () => {
    const { westDeg, southDeg, eastDeg, northDeg } = facts!.extent
    requestPlace([(westDeg + eastDeg) / 2, (southDeg + northDeg) / 2])
  }
  return (
    <li>
      <label class="shown">
        <input
          type="checkbox"
          checked={isShown}
          onChange={(event) => keeper.change(key, { isShown: event.currentTarget.checked })}
        />{' '}
        <bdi>{undirected(facts?.title || map.name)}</bdi>
      </label>
      <p class="soft">
        {KIND_WORDS[map.kind]}, {formatBytes(sizeBytes)}
        {facts === undefined && ', is being read'}
        {facts === null && ', cannot be read'}
        {facts?.shift && `, ${shiftWords(facts.shift, store.units.value)}`}
        {facts?.credit && (
          <>
            , <bdi>{undirected(facts.credit)}</bdi>
          </>
        )}
      </p>
      <label class="strength">
        How strong
        <input
          type="range"
          min="0.1"
          max="1"
          step="0.05"
          value={opacity}
          aria-label={`How strong ${name} is shown`}
          onInput={(event) => keeper.change(key, { opacity: event.currentTarget.valueAsNumber })}
        />
      </label>
      <div class="acts">
        <button
          type="button"
          disabled={isTopmost}
          aria-label={`${name} higher`}
          onClick={() => keeper.move(key, 1)}
        >
          Higher
        </button>
        <button
          type="button"
          disabled={isLowest}
          aria-label={`${name} lower`}
          onClick={() => keeper.move(key, -1)}
        >
          Lower
        </button>
        {facts && (
          <button type="button" aria-label={`Go there: ${name}`} onClick={goThere}>
            Go there
          </button>
        )}
        {map.kind === 'picture' && (
          <button type="button" aria-label={`Marks of ${name}`} onClick={() => void keeper.refit(key)}>
            Marks…
          </button>
        )}
        {isKept ? (
          <span class="soft">Kept in this browser</span>
        ) : (
          <button
            type="button"
            aria-label={`Keep ${name} in this browser`}
            onClick={() => void keeper.keep(key)}
          >
            Keep in this browser ({formatBytes(sizeBytes)})
          </button>
        )}
        <button type="button" aria-label={`Remove ${name}`} onClick={() => void keeper.remove(key)}>
          Remove
        </button>
      </div>
      {facts && (map.kind === 'pmtiles' || map.kind === 'mbtiles') && (
        <MapPart
          store={store}
          name={undirected(map.name)}
          weigh={async (extent) =>
            (await keeper.weigh(key, extent)) ?? 'That part has too many tiles to be kept.'
          }
          keep={(extent, zooms) => void keeper.keepPart(key, extent, Math.max(...zooms))}
        />
      )}
    </li>
  )
}

/** Where maps may be had that one may keep. */
function Sources() {
  return (
    <OnDemand title="Where such maps may be had">
      <ul>
        <li>
          Your country’s mapping agency: many give their maps as open data, as GeoTIFF pictures or archives of
          tiles. Their terms say what credit they ask for.
        </li>
        <li>
          Extracts of OpenStreetMap as PMTiles, such as Protomaps makes them: under the Open Database Licence,
          with the credit “© OpenStreetMap contributors”.
        </li>
        <li>A paper map of your own, photographed or scanned, where its publisher allows it for your use.</li>
        <li>
          Tiles from a server are looked at, not kept: the terms of most forbid to fetch them ahead, those of
          OpenStreetMap’s own server among them. Where the terms of yours allow it, say so while it is on: the
          part around the plan can be kept then.
        </li>
      </ul>
    </OnDemand>
  )
}
