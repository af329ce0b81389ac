import { useSignal } from '@preact/signals'
import { useId } from 'preact/hooks'
import type { Position } from '../../geo/position'
import { undirected } from '../../isolated'
import { circuitName, lineName, stationName } from '../../plan/plan'
import { requestPlace } from '../../state/requests'
import type { Selection } from '../../state/selection'
import type { Store } from '../../state/store'
import { doneInShort } from '../../words/done-words'
import { formatCount } from '../../words/units'
import { Question } from '../question'

interface Thing {
  readonly kind: string
  readonly name: string
  readonly selection: NonNullable<Selection>
  readonly position?: Position | undefined
}

/** More rows than this are not read through, but searched. */
const MOST_ROWS = 60
/** Without case and marks, so that who types in a hurry finds it as well. */
const plain = (text: string): string => undirected(text).normalize('NFD').replace(/\p{M}/gu, '').toLowerCase()

/** Every station, line and circuit of the plan by name, to be searched and gone to. */
export function Everything({ store }: { store: Store }) {
  const id = useId()
  const sought = useSignal('')
  const words = plain(sought.value).split(/\s+/).filter(Boolean)
  const all = thingsOf(store)
  const found = all.filter(({ kind, name }) => words.every((word) => plain(`${kind} ${name}`).includes(word)))
  if (all.length === 0) return null
  return (
    <Question ask="Where is it?">
      <label for={id} class="unseen">
        Search stations, lines and circuits
      </label>
      <input
        id={id}
        type="search"
        class="search"
        dir="auto"
        placeholder="Station, line or circuit"
        value={sought.value}
        onInput={(event) => {
          sought.value = event.currentTarget.value
        }}
      />
      <p class="soft" role="status">
        {words.length > 0 &&
          (found.length === 0 ? 'Nothing on the plan is called that.' : formatCount(found.length, 'thing'))}
      </p>
      {words.length > 0 && <Rows store={store} things={found} />}
      {words.length === 0 && (
        <details class="on-demand">
          <summary>All {all.length} of them</summary>
          <Rows store={store} things={found} />
        </details>
      )}
    </Question>
  )
}

function Rows({ store, things }: { store: Store; things: readonly Thing[] }) {
  return (
    <>
      <ul class="rows">
        {things.slice(0, MOST_ROWS).map(({ kind, name, selection, position }) => (
          <li key={`${selection.kind} ${selection.id}`}>
            <button
              type="button"
              class="quiet"
              onClick={() => {
                store.selection.value = selection
                if (position) requestPlace([position[0], position[1]])
              }}
            >
              {name}
            </button>
            <span class="soft">{kind}</span>
          </li>
        ))}
      </ul>
      {things.length > MOST_ROWS && <p class="soft">{things.length - MOST_ROWS} more: search for them.</p>}
    </>
  )
}

function thingsOf(store: Store): readonly Thing[] {
  const plan = store.plan.value
  const done = new Map(
    store.report.value.lines.map(({ id, field, wireM }) => [
      id,
      doneInShort(field, wireM, store.tongue.value),
    ]),
  )
  return [
    ...[...plan.circuits.values()].map(
      (circuit): Thing => ({
        kind: 'circuit',
        name: circuitName(plan, circuit),
        selection: { kind: 'circuit', id: circuit.id },
      }),
    ),
    ...[...plan.stations.values()].map(
      ({ id, position }): Thing => ({
        kind: 'station',
        name: stationName(plan, id),
        selection: { kind: 'station', id },
        position,
      }),
    ),
    ...[...plan.lines.values()].map(
      (line): Thing => ({
        kind: ['line', done.get(line.id)].filter(Boolean).join(' · '),
        name: lineName(plan, line),
        selection: { kind: 'line', id: line.id, legs: [] },
        position: plan.stations.get(line.from)?.position,
      }),
    ),
  ]
}
