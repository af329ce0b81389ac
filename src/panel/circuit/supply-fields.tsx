import type { Supply } from '../../catalog/supply'
import { isolated } from '../../isolated'
import { setSupply } from '../../plan/circuit-edits'
import { stationsOfCircuit } from '../../plan/circuit-topology'
import type { StationId } from '../../plan/id'
import { meetingPlace, portsNeeded } from '../../plan/lines-at-board'
import { type Circuit, type Plan, stationName } from '../../plan/plan'
import { circuitsWithCoils } from '../../plan/riding'
import { passesCoils } from '../../plan/riding-faults'
import type { Store } from '../../state/store'
import { formatCount } from '../../words/units'
import { SelectField } from '../select-field'

const NONE = ''

/** Kinds of supply in the order in which a person looks for them. */
const KINDS: { readonly [K in Supply['kind']]: string } = {
  series: 'Batteries in one leg',
  feed: 'Common batteries and feeds',
  ringdown: 'Ringdown units',
  board: 'Boards worked by hand',
  exchange: 'Automatic exchanges',
}

const joinsLines = (kind: Supply['kind']): boolean => kind === 'board' || kind === 'exchange'

/** What feeds a circuit or joins its lines, and from where. */
export function SupplyFields({ store, circuit }: { store: Store; circuit: Circuit }) {
  const { supply } = circuit
  const plan = store.plan.value
  const stations = stationsOfCircuit(plan, circuit)
  const supplies = store.choices.supplies.value
  const placeFor = (kind: Supply['kind'] | undefined): StationId | undefined =>
    supply?.at ??
    (kind && joinsLines(kind) ? meetingPlace(plan, circuit) : [...circuit.sets.keys()][0]) ??
    stations[0]
  const choose = (type: string) => {
    const at = placeFor(supplies.find(({ id }) => id === type)?.kind)
    if (at)
      store.edit((before) =>
        setSupply(
          store.withChosen(before, 'supplies', type),
          circuit.id,
          type === NONE ? null : { type, at },
        ),
      )
  }
  const option = (each: Supply) => {
    const reason = barred(plan, circuit, each, placeFor(each.kind))
    return {
      value: each.id,
      text: `${isolated(each.name)}${reason && `: ${reason}`}`,
      isBarred: reason !== '',
    }
  }
  const groups = Object.entries(KINDS).map(([kind, heading]) => ({
    heading,
    options: supplies.filter((each) => each.kind === kind).map(option),
  }))
  return (
    <>
      <SelectField
        label="Supply"
        value={supply?.type ?? NONE}
        options={[
          { value: NONE, text: 'none: each telephone has its own batteries' },
          ...groups.filter(({ options }) => options.length > 0),
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

/** Why a supply cannot be taken, in a few words; empty where it can. */
function barred(plan: Plan, circuit: Circuit, { kind, ports }: Supply, at: StationId | undefined): string {
  if (circuitsWithCoils(plan).has(circuit.id) && !passesCoils(kind))
    return 'its current does not pass the coils of this circuit'
  if (!joinsLines(kind) || !at || ports === undefined) return ''
  const lines = portsNeeded(plan, circuit, at, kind)
  return lines > ports ? `too small, ${formatCount(lines, 'line')} come in` : ''
}
