import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { stationName } from '../../plan/plan'
import { type FaultReading, findFault } from '../../report/find-fault'
import type { CircuitStudy } from '../../state/circuit-study'
import type { Store } from '../../state/store'
import { faultOnGround, faultSentence, spreadSentence, tagsSentence } from '../../words/fault-words'
import { NumberField } from '../number-field'
import { SelectField } from '../select-field'
import { ExpectedReadings } from './expected-readings'
import { FAULT_KINDS, type Readings, readingOf } from './fault-kinds'

const READING = { min: 0, max: 1e7 }
const KINDS = Object.entries(FAULT_KINDS).map(([value, { text }]) => ({
  value: value as FaultReading['kind'],
  text,
}))

interface Asked {
  readonly kind: FaultReading['kind']
  readonly from: string
  readonly to: string
  readonly values: Readings
}

/** Where a dead line is broken, short or to earth, from what a meter reads; the place is shown on the map. */
export function FaultFinder({ store, study }: { store: Store; study: CircuitStudy }) {
  const { plan, model, conditions, measured } = study
  const { stations } = model
  const system = store.units.value
  const say = store.tongue.value
  const asked = useSignal<Asked>({ kind: 'short', from: '', to: '', values: {} })
  const ask = (change: Partial<Asked>) => {
    asked.value = { ...asked.value, ...change }
  }
  const { kind, values } = asked.value
  const from = stations.includes(asked.value.from) ? asked.value.from : (stations[0] ?? '')
  const to = stations.includes(asked.value.to) ? asked.value.to : (stations.at(-1) ?? '')
  const options = stations.map((id) => ({ value: id, text: stationName(plan, id) }))

  const reading = readingOf(kind, values)
  const question = reading && { from, to, reading }
  const answer = question && findFault(model, conditions, question)
  const place = answer && faultOnGround(plan, measured, answer)
  useEffect(() => {
    store.faultPlace.value = place?.position ?? null
    return () => {
      store.faultPlace.value = null
    }
  }, [place?.position.join()])

  return (
    <>
      <p>
        Before you measure: disconnect the supply, take every set and every branch off the line, open a ring,
        and let nobody crank. Ringing volts hurt, and they ruin the meter. Keep off the line in a
        thunderstorm.
      </p>
      <SelectField
        label="The meter stands at"
        value={from}
        options={options}
        onCommit={(station) => ask({ from: station })}
      />
      <SelectField
        label="It reads towards"
        value={to}
        options={options}
        onCommit={(station) => ask({ to: station })}
      />
      <SelectField
        label="What is measured"
        value={kind}
        options={KINDS}
        onCommit={(chosen) => ask({ kind: chosen })}
      />
      <p class="soft">{FAULT_KINDS[kind].how}</p>
      {FAULT_KINDS[kind].fields.map(({ name, label, quantity, optional }) => {
        const keep = (value: number | undefined) => {
          ask({ values: { ...values, [name]: value } })
          return []
        }
        return (
          <NumberField
            key={`${kind} ${name}`}
            label={label}
            quantity={quantity}
            system={system}
            value={values[name]}
            limit={READING}
            onCommit={keep}
            {...(optional && { onClear: () => void keep(undefined) })}
          />
        )
      })}
      <p class="found" role="status">
        {question && answer && (
          <>
            <strong>{faultSentence(plan, measured, question, answer, say)}</strong>{' '}
            {spreadSentence(answer, say)} {tagsSentence(plan, measured, answer, say)}{' '}
            {place && 'It is marked on the map.'}
          </>
        )}
      </p>
      <ExpectedReadings study={study} from={from} />
    </>
  )
}
