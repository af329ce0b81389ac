import { useSignal } from '@preact/signals'
import { renameCircuit, setSet, takeLineIn, takeLineOut } from '../../plan/circuit-edits'
import { stationsOfCircuit } from '../../plan/circuit-topology'
import type { LineId, StationId } from '../../plan/id'
import { type Circuit, lineName, stationName } from '../../plan/plan'
import { endCircuit } from '../../state/removals'
import type { Store } from '../../state/store'
import { SelectField } from '../select-field'
import { TextField } from '../text-field'
import { OverFields } from './over-fields'
import { SetField } from './set-field'
import { SupplyFields } from './supply-fields'

const NONE = ''

/** What a circuit is made of: its name, its supply, the set at each station, its lines. */
export function CircuitSetup({ store, circuit }: { store: Store; circuit: Circuit }) {
  const plan = store.plan.value
  const stations = stationsOfCircuit(plan, circuit)
  return (
    <>
      <TextField
        label="Name"
        value={circuit.name}
        needed
        onCommit={(name) => store.edit((before) => renameCircuit(before, circuit.id, name))}
      />
      <SupplyFields store={store} circuit={circuit} />
      <OverFields store={store} circuit={circuit} />
      <h3>Sets</h3>
      {stations.length > 1 && <SetEverywhere store={store} circuit={circuit} stations={stations} />}
      {stations.map((station) => (
        <SetField
          key={station}
          label={stationName(plan, station)}
          store={store}
          value={circuit.sets.get(station) ?? null}
          onCommit={(set) =>
            store.edit((before) => setSet(store.withChosen(before, 'sets', set), circuit.id, station, set))
          }
        />
      ))}
      <h3>Lines</h3>
      <CircuitLines store={store} circuit={circuit} />
      <button type="button" class="harm" onClick={() => endCircuit(store, circuit.id)}>
        Take the circuit off; leave its wire
      </button>
    </>
  )
}

interface StationFields {
  readonly store: Store
  readonly circuit: Circuit
  readonly stations: readonly StationId[]
}

/** The same set at all stations, in one go and one undo step. */
function SetEverywhere({ store, circuit, stations }: StationFields) {
  const now = new Set(stations.map((station) => circuit.sets.get(station) ?? null))
  const put = (set: string | null) =>
    store.edit((before) =>
      stations.reduce(
        (plan, station) => setSet(plan, circuit.id, station, set),
        store.withChosen(before, 'sets', set),
      ),
    )
  return (
    <SetField
      label="All stations"
      store={store}
      value={now.size === 1 ? [...now][0]! : null}
      several={now.size > 1}
      onCommit={put}
    />
  )
}

function CircuitLines({ store, circuit }: { store: Store; circuit: Circuit }) {
  const plan = store.plan.value
  const refusal = useSignal('')
  const others = [...plan.lines.values()].filter((line) => !circuit.lines.includes(line.id))
  const takeIn = (id: string) => {
    const problems = store.tryEdit((before) => takeLineIn(before, circuit.id, id as LineId))
    refusal.value = problems[0]?.message ?? ''
  }
  return (
    <>
      <ul class="rows">
        {circuit.lines.map((id) => {
          const line = plan.lines.get(id)
          if (!line) return null
          const name = lineName(plan, line)
          return (
            <li key={id}>
              <button
                type="button"
                class="quiet"
                onClick={() => {
                  store.selection.value = { kind: 'line', id, legs: [] }
                }}
              >
                {name}
              </button>
              <button
                type="button"
                aria-label={`Take ${name} out of the circuit`}
                onClick={() => store.edit((before) => takeLineOut(before, circuit.id, id))}
              >
                Take out
              </button>
            </li>
          )
        })}
      </ul>
      {others.length > 0 && (
        <SelectField
          label="Add a line"
          value={NONE}
          options={[
            { value: NONE, text: 'choose a line' },
            ...others.map((line) => ({ value: line.id as string, text: lineName(plan, line) })),
          ]}
          onCommit={takeIn}
        />
      )}
      {refusal.value && (
        <p class="refusal" role="alert">
          {refusal.value}
        </p>
      )}
    </>
  )
}
