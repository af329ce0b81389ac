import { isolated } from '../../isolated'
import { circuitsAtStation } from '../../plan/circuit-topology'
import type { LineId, StationId } from '../../plan/id'
import { LAYS } from '../../plan/lays'
import { type Circuit, circuitName, type Lay, stationName } from '../../plan/plan'
import type { FarAsked } from '../../state/far-state'
import type { Store } from '../../state/store'
import { equipmentUsedLast, wireUsedLast } from '../../state/used-last'
import { farSentences } from '../../words/far-words'
import { LAY_WORDS } from '../../words/plan-words'
import { tongueOf } from '../../words/tongue'
import { Question } from '../question'
import { SelectField } from '../select-field'

const OF_ITS_OWN = ''

/** From a station: how far away one telephone more could stand. It is shown on the map for as long as it is wanted. */
export function HowFar({ store, from }: { store: Store; from: StationId }) {
  const plan = store.plan.value
  const circuits = circuitsAtStation(plan, from).filter(({ over }) => !over)
  const asked = store.farAsked.value
  const shown = asked?.from === from ? asked : null
  const first = circuits[0]
  const used = equipmentUsedLast(store, plan)
  /** Another circuit is asked with a telephone and a wire such as it has. */
  const usualOn = (circuit: Circuit | undefined) => ({
    circuit: circuit?.id ?? null,
    wire: plan.lines.get(circuit?.lines[0] ?? ('' as LineId))?.wire ?? wireUsedLast(store, plan),
    set: [...(circuit?.sets.values() ?? [])].at(-1) ?? used.set,
  })
  const now: FarAsked = shown ?? { from, ...usualOn(first), lay: 'surface' }
  const ask = (change: Partial<FarAsked>) => {
    store.farAsked.value = { ...now, ...change }
  }
  return (
    <Question ask="How far could the next telephone stand?">
      {shown ? (
        <>
          <Answer store={store} from={from} />
          {circuits.length > 0 && (
            <SelectField
              label="On the circuit"
              value={now.circuit ?? OF_ITS_OWN}
              options={[
                ...circuits.map((circuit) => ({
                  value: circuit.id as string,
                  text: circuitName(plan, circuit),
                })),
                { value: OF_ITS_OWN, text: 'one of its own' },
              ]}
              onCommit={(id) => ask(usualOn(circuits.find((each) => each.id === id)))}
            />
          )}
          <SelectField
            label="Telephone"
            value={now.set}
            options={store.choices.sets.value.map(({ id, name }) => ({ value: id, text: isolated(name) }))}
            onCommit={(set) => ask({ set })}
          />
          <SelectField
            label="Wire"
            value={now.wire}
            options={store.choices.wires.value.map(({ id, name }) => ({ value: id, text: isolated(name) }))}
            onCommit={(wire) => ask({ wire })}
          />
          <SelectField
            label="Laid"
            value={now.lay}
            options={LAYS.map((lay) => ({ value: lay as string, text: LAY_WORDS[lay] }))}
            onCommit={(lay) => ask({ lay: lay as Lay })}
          />
          <div class="acts">
            <button
              type="button"
              onClick={() => {
                store.farAsked.value = null
              }}
            >
              Take it off the map
            </button>
          </div>
        </>
      ) : (
        <div class="acts">
          <button type="button" onClick={() => ask({})}>
            Show how far from here
          </button>
        </div>
      )}
    </Question>
  )
}

function Answer({ store, from }: { store: Store; from: StationId }) {
  const far = store.far.value
  if (store.farDrawn.value) return <p class="soft">The map shows it of the line in hand.</p>
  if (far?.failure)
    return (
      <p class="fails" role="alert">
        {far.failure}
      </p>
    )
  if (!far?.found) return <p class="soft">How far it could go is being reckoned.</p>
  const say = tongueOf(far.plan, store.units.value)
  return (
    <>
      {farSentences(far.found, stationName(far.plan, from), say).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <p class="soft" aria-live="polite">
        {far.isUnderWay || far.found.limitsM.nine === undefined
          ? 'Still being made finer.'
          : 'The shades lie over the ground’s own lengths and go round keep-out areas. The wire counts with its slack and both tails.'}
      </p>
    </>
  )
}
