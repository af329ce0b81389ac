import { LIMITS } from '../../plan/limits'
import {
  type Circuit,
  DEFAULT_ELECTRODE_OHMS,
  lineName,
  type Over,
  type Plan,
  stationName,
} from '../../plan/plan'
import { setElectrode, setOver } from '../../plan/rider-edits'
import type { Problem } from '../../problem'
import type { Store } from '../../state/store'
import { formatCount } from '../../words/units'
import { NumberField } from '../number-field'
import { SelectField } from '../select-field'

type Way = Over | 'pair'

const WORDS: { readonly [W in Way]: string } = {
  pair: 'a pair of its own',
  phantom: 'two pairs that others use (phantom)',
  simplex: 'one pair that another uses, and the earth (simplex)',
}

/** Whether a circuit has a pair of its own or rides on others', what that saves, and the rods of a simplex. */
export function OverFields({ store, circuit }: { store: Store; circuit: Circuit }) {
  const plan = store.plan.value
  const system = store.units.value
  const options = (Object.keys(WORDS) as Way[]).map((value) => {
    const tried = setOver(plan, circuit.id, value)
    const reason = tried.ok ? '' : reasonWords(plan, tried.problems[0]!)
    return { value, text: `${WORDS[value]}${reason && `: ${reason}`}`, isBarred: reason !== '' }
  })
  const rods = circuit.over === 'simplex' ? [...circuit.sets.keys()] : []
  return (
    <>
      <SelectField
        label="It goes over"
        value={circuit.over ?? 'pair'}
        options={options}
        onCommit={(over) => void store.tryEdit((before) => setOver(before, circuit.id, over))}
      />
      {circuit.over && <p class="soft">{savingSentence(store, circuit)}</p>}
      {rods.map((station) => (
        <NumberField
          key={station}
          label={`Electrode at ${stationName(plan, station)}`}
          quantity="ohm"
          system={system}
          value={circuit.electrodeOhms?.[station] ?? DEFAULT_ELECTRODE_OHMS}
          limit={LIMITS.electrodeOhms}
          onCommit={(ohms) => store.tryEdit((before) => setElectrode(before, circuit.id, station, ohms))}
        />
      ))}
    </>
  )
}

/** Why a circuit cannot go over what is asked, in a few words. */
export function reasonWords(plan: Plan, { code, at, message }: Problem): string {
  const line = plan.lines.get(at as never)
  switch (code) {
    case 'too-few-pairs':
    case 'no-spare-pair':
      return line ? `${lineName(plan, line)} has too few pairs` : message
    case 'earth-under-rider':
      return line ? `${lineName(plan, line)} returns through the earth` : message
    case 'dc-through-coil':
      return 'direct current would have to pass its coils'
    default:
      return message
  }
}

/** What a pair of its own would take beside it. */
function savingSentence(store: Store, circuit: Circuit): string {
  const { run, mass } = store.tongue.value
  const lines = store.report.value.lines.filter(({ id }) => circuit.lines.includes(id))
  const wireM = lines.reduce((sum, line) => sum + line.wireM, 0)
  const kg = lines.reduce((sum, line) => sum + line.kg / (store.plan.value.lines.get(line.id)?.pairs ?? 1), 0)
  return `It takes no wire. A pair of its own along the same way would take ${run(wireM)}, ${mass(kg)}, in ${formatCount(lines.length, 'line')}; the coils at its ends take some of speech and ringing.`
}
