import { isolated, undirected } from '../../isolated'
import { requestPlace } from '../../state/requests'
import type { Store } from '../../state/store'
import { chooseFiles, HAZARD_TYPES } from '../../storage/choose-files'
import type { KeptGrid } from '../../terrain/kept-grid'
import { formatBytes, formatCellM, shiftWords } from '../../words/ground-words'
import { formatCount } from '../../words/units'
import { OnDemand, Question } from '../question'
import { TileServer } from '../tile-server'
import { OpenElevations } from './open-elevations'

/** The elevations at hand, and the way to more. */
export function GroundQuestion({ store }: { store: Store }) {
  const grids = store.grids.value
  return (
    <Question ask="Do we know the ground?">
      <p>{groundSentence(store)}</p>
      {grids.map(
        ({ key, name, shift }) =>
          shift && (
            <p key={key} class="soft">
              <bdi>{undirected(name)}</bdi> {shiftWords(shift, store.units.value)}.
            </p>
          ),
      )}
      <div class="acts">
        <OpenElevations store={store} />
        <button
          type="button"
          onClick={() =>
            chooseFiles(
              HAZARD_TYPES,
              (files) =>
                void import('../../storage/open-dropped').then(({ importHazards }) =>
                  importHazards(store, files),
                ),
            )
          }
        >
          Add roads, waters, power lines…
        </button>
      </div>
      {grids.length > 0 && (
        <OnDemand title={`${formatCount(grids.length, 'elevation file')}, the finest first`}>
          <ul class="rows">
            {[...grids].sort(byFineness).map((grid) => (
              <GridRow key={grid.key} store={store} grid={grid} />
            ))}
          </ul>
        </OnDemand>
      )}
      <TileServer use="elevation" />
    </Question>
  )
}

const byFineness = (a: KeptGrid, b: KeptGrid) => (a.cellM ?? Infinity) - (b.cellM ?? Infinity)

function GridRow({ store, grid }: { store: Store; grid: KeptGrid }) {
  const system = store.units.value
  return (
    <li>
      <span>
        <bdi>{undirected(grid.name)}</bdi>
        <span class="soft">
          {' '}
          {STATE_WORDS[grid.state]}
          {grid.cellM !== undefined && `cells of ${formatCellM(grid.cellM, system)}, `}
          {formatBytes(grid.sizeBytes)}
        </span>
      </span>
      {grid.state === 'elsewhere' && (
        <button
          type="button"
          aria-label={`Go to where ${grid.name} lies`}
          onClick={async () => {
            const place = await store.groundWorker.value?.find(grid.key)
            if (place) requestPlace(place)
          }}
        >
          Go there
        </button>
      )}
      {grid.key !== 'demo' && grid.key !== 'online' && (
        <button
          type="button"
          aria-label={`Remove ${isolated(grid.name)}`}
          onClick={() => void store.groundWorker.value?.remove(grid.key)}
        >
          Remove
        </button>
      )}
    </li>
  )
}

const STATE_WORDS: Readonly<Record<KeptGrid['state'], string>> = {
  read: '',
  elsewhere: 'lies elsewhere, ',
  waiting: 'is read where a plan is drawn, ',
  broken: 'cannot be read, ',
}

function groundSentence(store: Store): string {
  const { lines } = store.report.value
  const legs = lines.flatMap((line) => line.legs)
  const known = legs.filter((leg) => leg.onGrid).length
  if (store.grids.value.every(({ state }) => state !== 'read')) {
    return legs.length === 0
      ? 'Not yet: lengths will be the map’s, without hills. Open an elevation file (GeoTIFF, or SRTM .hgt), or drop one anywhere on the page.'
      : 'No: lengths are the map’s, without hills. Open an elevation file (GeoTIFF, or SRTM .hgt), or drop one anywhere on the page.'
  }
  if (known === legs.length) return 'Yes: lengths follow the ground.'
  return `In part: ${legs.length - known} of ${formatCount(legs.length, 'leg')} lie where no height is known, and have the map’s length. Under “Is this meant?” stands where.`
}
