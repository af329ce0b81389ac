import type { Lack } from '../../budget/circuit-notes'
import { setSet, setSupply } from '../../plan/circuit-edits'
import { stationsOfCircuit } from '../../plan/circuit-topology'
import type { StationId } from '../../plan/id'
import type { Circuit, Plan } from '../../plan/plan'
import type { Store } from '../../state/store'
import { equipmentUsedLast } from '../../state/used-last'
import { lackSentence } from '../../words/circuit-notes'

interface Step {
  readonly words: string
  readonly change: (plan: Plan) => Plan
}

/** The first thing that an unfinished circuit lacks, and a button for it. The rest follows when that is done. */
export function NextStep({ store, circuit, lack }: { store: Store; circuit: Circuit; lack: Lack }) {
  const step = stepFor(store, circuit, lack)
  return (
    <div class="next-step">
      <p>{lackSentence(lack, store.tongue.value)}</p>
      {step && (
        <button type="button" onClick={() => store.edit(step.change)}>
          {step.words}
        </button>
      )}
    </div>
  )
}

/** What mends a lack by one press: the kind of telephone, or of supply, that was used last. */
function stepFor(store: Store, circuit: Circuit, lack: Lack): Step | undefined {
  const plan = store.plan.value
  const { name } = store.tongue.value
  const { set, supply } = equipmentUsedLast(store, plan)
  const put = (station: StationId): Step => ({
    words: `Put “${name(set)}” at ${name(station)}`,
    change: (before) => setSet(before, circuit.id, station, set),
  })
  switch (lack.code) {
    case 'one-set': {
      const bare = stationsOfCircuit(plan, circuit).filter((station) => !circuit.sets.has(station))
      const last = bare.at(-1)
      return last && set ? put(last) : undefined
    }
    case 'battery-without-set':
      return set ? put(lack.station as StationId) : undefined
    case 'no-supply': {
      const rings = [...store.catalog.value.supplies.values()].find(({ ring }) => ring)
      const type = supply ?? rings?.id
      const at = lack.station as StationId
      return type
        ? {
            words: `Put “${name(type)}” at ${name(at)}`,
            change: (before) => setSupply(before, circuit.id, { type, at }),
          }
        : undefined
    }
    default:
      return undefined
  }
}
