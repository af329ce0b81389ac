import { isolated } from '../../isolated'
import { setSupply } from '../../plan/circuit-edits'
import { stationsOfCircuit } from '../../plan/circuit-topology'
import { type Circuit, stationName } from '../../plan/plan'
import type { Store } from '../../state/store'
import { SelectField } from '../select-field'

const NONE = ''

/** What feeds a circuit, and from where. */
export function SupplyFields({ store, circuit }: { store: Store; circuit: Circuit }) {
  const { supply } = circuit
  const plan = store.plan.value
  const stations = stationsOfCircuit(plan, circuit)
  const choose = (type: string) => {
    const at = supply?.at ?? [...circuit.sets.keys()][0] ?? stations[0]
    if (at) store.edit((before) => setSupply(before, circuit.id, type === NONE ? null : { type, at }))
  }
  return (
    <>
      <SelectField
        label="Supply"
        value={supply?.type ?? NONE}
        options={[
          { value: NONE, text: 'none: each telephone has its own batteries' },
          ...[...store.catalog.value.supplies.values()].map(({ id, name }) => ({
            value: id,
            text: isolated(name),
          })),
        ]}
        onCommit={choose}
      />
      {supply && (
        <SelectField
          label="It stands at"
          value={supply.at}
          options={stations.map((id) => ({ value: id, text: stationName(plan, id) }))}
          onCommit={(at) => store.edit((before) => setSupply(before, circuit.id, { type: supply.type, at }))}
        />
      )}
    </>
  )
}
