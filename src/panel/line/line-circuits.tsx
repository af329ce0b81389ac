import { isUnfinished } from '../../budget/circuit-notes'
import { setSet } from '../../plan/circuit-edits'
import { circuitsOfLine } from '../../plan/circuit-topology'
import type { StationId } from '../../plan/id'
import { type Circuit, circuitName, type Line, stationName } from '../../plan/plan'
import type { Store } from '../../state/store'
import { NextStep } from '../circuit/next-step'
import { Remedies } from '../circuit/remedies'
import { SetField } from '../circuit/set-field'
import { Standing } from '../circuit/standing'
import { SupplyFields } from '../circuit/supply-fields'

/** What the line is for: whether its circuit works, and the telephone at each of its ends. */
export function LineCircuits({ store, line }: { store: Store; line: Line }) {
  const circuits = circuitsOfLine(store.plan.value, line.id)
  return (
    <>
      {circuits.map((circuit) => (
        <LineCircuit
          key={circuit.id}
          store={store}
          line={line}
          circuit={circuit}
          alone={circuits.length === 1}
        />
      ))}
    </>
  )
}

interface Props {
  readonly store: Store
  readonly line: Line
  readonly circuit: Circuit
  readonly alone: boolean
}

function LineCircuit({ store, line, circuit, alone }: Props) {
  const plan = store.plan.value
  const found = store.report.value.circuits.find(({ id }) => id === circuit.id)
  if (!found) return null
  const [lack] = found.missing
  const telephone = (station: StationId) => (
    <SetField
      store={store}
      label={`${alone ? 'Telephone' : circuitName(plan, circuit)}: ${stationName(plan, station)}`}
      value={circuit.sets.get(station) ?? null}
      onCommit={(set) =>
        store.edit((before) => setSet(store.withChosen(before, 'sets', set), circuit.id, station, set))
      }
    />
  )
  return (
    <>
      <Standing store={store} found={found} />
      {lack && <NextStep store={store} circuit={circuit} lack={lack} />}
      {telephone(line.from)}
      {telephone(line.to)}
      {alone && <SupplyFields store={store} circuit={circuit} />}
      {!isUnfinished(found.missing) && found.verdict !== 'works' && (
        <Remedies store={store} circuit={circuit} found={found} />
      )}
    </>
  )
}
