import { parsePlace } from '../geo/parse-place'
import { placeText } from '../geo/place-text'
import type { Position } from '../geo/position'
import { undirected } from '../isolated'
import { setSet } from '../plan/circuit-edits'
import { circuitsAtStation } from '../plan/circuit-topology'
import type { StationId } from '../plan/id'
import { circuitName, lineName } from '../plan/plan'
import { moveStation, noteStation, renameStation } from '../plan/station-edits'
import { deleteStation } from '../state/removals'
import type { Store } from '../state/store'
import { formatCount } from '../words/units'
import { SetField } from './circuit/set-field'
import { loadWhenShown } from './load-when-shown'
import { Question } from './question'
import { TextField } from './text-field'

const HowFar = loadWhenShown(async () => (await import('./ground/how-far')).HowFar)
const RouteFrom = loadWhenShown(async () => (await import('./ground/route-from')).RouteFrom)

/** A place in any usual way of writing it; the sentence that refuses it. */
function placeOf(text: string, take: (position: Position) => unknown): string | undefined {
  const found = parsePlace(text)
  if (!found.ok) return found.problems[0]?.message
  take(found.value)
  return undefined
}

/** One station: its name, where it stands, the sets on it, the lines that end there. */
export function StationCard({ store, id }: { store: Store; id: StationId }) {
  const plan = store.plan.value
  const station = plan.stations.get(id)
  if (!station) return null
  const [lonDeg, latDeg] = station.position
  const circuits = circuitsAtStation(plan, id)
  const lines = [...plan.lines.values()].filter((line) => line.from === id || line.to === id)
  const heightM = store.ground.value?.heightM(lonDeg, latDeg)
  const place = (position: Position) => store.edit((before) => moveStation(before, id, position))

  return (
    <>
      <h1>
        <bdi>{undirected(station.name) || 'Station without a name'}</bdi>
      </h1>
      <TextField
        label="Name"
        value={station.name}
        needed
        onCommit={(name) => store.edit((before) => renameStation(before, id, name))}
      />
      <TextField
        label="Note"
        lines={1}
        value={station.note}
        onCommit={(note) => store.edit((before) => noteStation(before, id, note))}
      />
      <Question ask="Where does it stand?">
        <TextField
          label="Place"
          lines={1}
          value={placeText(station.position, store.placeForm.value)}
          pause
          refuse={(text) => placeOf(text, () => undefined)}
          onCommit={(text) => void placeOf(text, place)}
        />
        <p class="soft">
          {heightM !== undefined && `${store.tongue.value.length(heightM)} high. `}
          Type or paste it in any usual form; View sets the one shown here.
        </p>
      </Question>
      <Question ask="Who answers here?">
        {circuits.length === 0 && <p>Nobody yet: no circuit reaches this station. Draw a line to it.</p>}
        {circuits.map((circuit) => (
          <SetField
            key={circuit.id}
            store={store}
            label={circuitName(plan, circuit)}
            value={circuit.sets.get(id) ?? null}
            onCommit={(set) =>
              store.edit((before) => setSet(store.withChosen(before, 'sets', set), circuit.id, id, set))
            }
          />
        ))}
      </Question>
      <HowFar store={store} from={id} />
      <RouteFrom store={store} from={id} />
      <Question ask="Which lines end here?">
        {lines.length === 0 && <p>None.</p>}
        <ul class="rows">
          {lines.map((line) => (
            <li key={line.id}>
              <button
                type="button"
                class="quiet"
                onClick={() => {
                  store.selection.value = { kind: 'line', id: line.id, legs: [] }
                }}
              >
                {lineName(plan, line)}
              </button>
            </li>
          ))}
        </ul>
        <button type="button" class="harm" onClick={() => deleteStation(store, id)}>
          Delete the station{lines.length > 0 && ` and its ${formatCount(lines.length, 'line')}`}
        </button>
      </Question>
    </>
  )
}
