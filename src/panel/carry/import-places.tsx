import { useSignal } from '@preact/signals'
import { useEffect, useMemo } from 'preact/hooks'
import { HAZARDS } from '../../hazard/kinds'
import { undirected } from '../../isolated'
import { addPlaces, JOIN_M, type PlaceMeaning } from '../../plan/add-places'
import { HAZARD_KINDS } from '../../plan/hazard-schema'
import type { NamedPath, NamedPoint, Places } from '../../plan/places'
import { EMPTY_PLAN } from '../../plan/plan'
import { requestPlace } from '../../state/requests'
import type { Store } from '../../state/store'
import { wireUsedLast } from '../../state/used-last'
import { formatCount } from '../../words/units'
import { NumberField } from '../number-field'
import { SelectField, SelectFieldOf } from '../select-field'
import { CarryDialog } from './carry-dialog'

type PathMeaning = ReturnType<PlaceMeaning['pathsOf']>

/** Beyond this nobody means two ends to be one, m. */
const MOST_JOIN_M = 100

const PATH_OPTIONS: readonly { readonly value: PathMeaning; readonly text: string }[] = [
  { value: 'wire', text: 'wire' },
  ...HAZARD_KINDS.map((kind) => ({ value: kind, text: HAZARDS[kind].word })),
  { value: 'nothing', text: 'left out' },
]

/** What was found in a file of another program: shown on the map as it would become, before anything is taken. */
export function ImportPlaces({ store }: { store: Store }) {
  const found = store.importedPlaces.value
  if (!found) return null
  const close = () => {
    store.cancel()
    store.importedPlaces.value = null
  }
  return (
    <CarryDialog title={`What is in ${undirected(found.name)}?`} onClose={close} letsMapShow>
      <Meanings key={found.name} store={store} name={found.name} places={found.places} onDone={close} />
    </CarryDialog>
  )
}

interface MeaningsProps {
  readonly store: Store
  readonly name: string
  readonly places: Places
  readonly onDone: () => void
}

function Meanings({ store, name, places, onDone }: MeaningsProps) {
  const { layers, groupOf } = useMemo(() => layersOf(places), [places])
  const pointsMean = useSignal<ReadonlyMap<string, 'stations' | 'nothing'>>(new Map())
  const pathsMean = useSignal<ReadonlyMap<string, PathMeaning>>(new Map())
  const joinM = useSignal(JOIN_M)
  const wire = useSignal(wireUsedLast(store, store.settled.peek()))
  const meaning: PlaceMeaning = {
    joinM: joinM.value,
    wire: wire.value,
    pointsOf: (layer) => pointsMean.value.get(groupOf(layer)) ?? 'stations',
    pathsOf: (layer) => pathsMean.value.get(groupOf(layer)) ?? 'wire',
  }
  const plan = store.settled.value
  const isTooMuch = thingsOf(places, meaning) > MOST_THINGS
  const added = useMemo(
    () => (isTooMuch ? plan : addPlaces(plan, places, meaning)),
    [plan, places, joinM.value, wire.value, pointsMean.value, pathsMean.value],
  )
  useEffect(() => store.preview(() => added), [added])
  useEffect(() => {
    const first = places.points[0]?.position ?? places.paths[0]?.positions[0]
    if (first) requestPlace(first)
  }, [places])
  const more = (['stations', 'lines', 'hazards'] as const).map((kind) => added[kind].size - plan[kind].size)
  const isNothing = more.every((count) => count === 0)
  return (
    <>
      <p>
        {formatCount(places.points.length, 'point')}, {formatCount(places.paths.length, 'line')}. The map
        shows what they would become; nothing is taken yet.
      </p>
      {layers.map(({ layer, points, paths }) => (
        <fieldset key={layer}>
          {layers.length > 1 && (
            <legend>
              <bdi>{layer || 'Without a folder'}</bdi>
            </legend>
          )}
          {points.length > 0 && (
            <SelectField
              label={`${formatCount(points.length, 'point')}${namesOf(points)}`}
              value={pointsMean.value.get(layer) ?? 'stations'}
              options={[
                { value: 'stations', text: 'stations' },
                { value: 'nothing', text: 'left out' },
              ]}
              onCommit={(value) => {
                pointsMean.value = new Map(pointsMean.value).set(layer, value)
              }}
            />
          )}
          {paths.length > 0 && (
            <SelectField
              label={`${formatCount(paths.length, 'line')}${namesOf(paths)}`}
              value={pathsMean.value.get(layer) ?? 'wire'}
              options={PATH_OPTIONS}
              onCommit={(value) => {
                pathsMean.value = new Map(pathsMean.value).set(layer, value)
              }}
            />
          )}
        </fieldset>
      ))}
      <SelectFieldOf
        label="Wire"
        of={wire}
        options={[...store.catalog.value.wires.values()].map(({ id, name: text }) => ({ value: id, text }))}
      />
      <NumberField
        label="Ends of wire so near to a station are at it"
        quantity="lengthM"
        system={store.units.value}
        value={joinM.value}
        limit={{ min: 0, max: MOST_JOIN_M }}
        onCommit={(value) => {
          joinM.value = value
          return []
        }}
      />
      <p role="status">
        {isTooMuch
          ? `That would be more than ${MOST_THINGS.toLocaleString('en')} stations, lines and hazards, and no plan bears so many: leave a part out above, or cut out of the file what you need.`
          : isNothing
            ? 'Nothing would be added.'
            : `Would be added: ${formatCount(more[0]!, 'station')}, ${formatCount(more[1]!, 'line')}, ${formatCount(more[2]!, 'hazard')}.`}
      </p>
      <div class="acts">
        <button
          type="button"
          disabled={isNothing}
          onClick={() => {
            store.preview(() => added)
            store.settle()
            onDone()
          }}
        >
          Add to this plan
        </button>
        <button
          type="button"
          disabled={isNothing}
          onClick={() => {
            store.cancel()
            const title = name.replace(/\.[a-z]+$/i, '')
            store.open(addPlaces({ ...EMPTY_PLAN, title }, places, meaning))
            onDone()
          }}
        >
          Open as a plan of its own
        </button>
        <button type="button" onClick={onDone}>
          Add nothing
        </button>
      </div>
    </>
  )
}

/** More from one file nobody can work with: the program is made for a thousand stations. */
const MOST_THINGS = 5000

/** How many stations, lines and hazards places would become, joined ends left aside. */
const thingsOf = ({ points, paths }: Places, { pointsOf, pathsOf }: PlaceMeaning): number =>
  points.filter(({ layer }) => pointsOf(layer) === 'stations').length +
  paths.filter(({ layer }) => pathsOf(layer) !== 'nothing').length

/** So many folders are asked about one by one; beyond, nobody reads on. */
const MOST_LAYERS = 30

interface Layer {
  readonly layer: string
  readonly points: readonly NamedPoint[]
  readonly paths: readonly NamedPath[]
}

/** The folders of a file, those beyond the first thirty as one, and under which each layer is asked about. */
function layersOf({ points, paths }: Places): {
  readonly layers: readonly Layer[]
  readonly groupOf: (layer: string) => string
} {
  const names = new Set([...points, ...paths].map(({ layer }) => layer))
  const own = new Set([...names].slice(0, names.size > MOST_LAYERS ? MOST_LAYERS - 1 : MOST_LAYERS))
  const others = `${formatCount(names.size - own.size, 'folder')} more`
  const groupOf = (layer: string) => (own.has(layer) ? layer : others)
  const inGroups = <T extends { readonly layer: string }>(things: readonly T[]) => {
    const groups = new Map<string, T[]>()
    for (const each of things) {
      const group = groups.get(groupOf(each.layer))
      if (group) group.push(each)
      else groups.set(groupOf(each.layer), [each])
    }
    return groups
  }
  const [pointsIn, pathsIn] = [inGroups(points), inGroups(paths)]
  const layers = [...new Set([...pointsIn.keys(), ...pathsIn.keys()])].map((layer) => ({
    layer,
    points: pointsIn.get(layer) ?? [],
    paths: pathsIn.get(layer) ?? [],
  }))
  return { layers, groupOf }
}

const MOST_NAMES = 3
const MOST_LETTERS = 24

/** The first names of a layer, so that a person knows what is meant. */
function namesOf(things: readonly { readonly name: string }[]): string {
  const names = things.map(({ name }) => name).filter(Boolean)
  if (names.length === 0) return ''
  const shown = names
    .slice(0, MOST_NAMES)
    .map((name) => undirected(name.length > MOST_LETTERS ? `${name.slice(0, MOST_LETTERS)}…` : name))
  return `: ${shown.join(', ')}${names.length > MOST_NAMES ? ' …' : ''}`
}
