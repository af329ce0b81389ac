import { useSignal } from '@preact/signals'
import { type BUILDS, type MakeUp, METALS, wireFromMakeUp, wireFromReading } from '../../catalog/own-wire'
import type { Wire } from '../../catalog/wire'
import type { Problem, Result } from '../../problem'
import type { Store } from '../../state/store'
import { NumberField } from '../number-field'
import { OnDemand } from '../question'
import { SelectField } from '../select-field'

interface Props {
  readonly store: Store
  /** The next id that nothing bears. */
  readonly freeId: (id: string) => string
  readonly onPut: (wire: Wire) => readonly Problem[]
}

const BUILD_WORDS: Readonly<Record<keyof typeof BUILDS, string>> = {
  jacketed: 'two wires in one jacket',
  twisted: 'two wires twisted',
  'side-by-side': 'two wires side by side',
  'bare-apart': 'two bare wires apart',
}

const options = <K extends string>(words: Readonly<Record<K, string>>) =>
  (Object.keys(words) as K[]).map((value) => ({ value, text: words[value] }))

const METAL_OPTIONS = (Object.keys(METALS) as (keyof typeof METALS)[]).map((value) => ({
  value,
  text: value.replaceAll('-', ' '),
}))

/** A wire of the person's own from what a cut end shows: its metal, its strands and their diameter. */
export function WireFromCutEnd({ store, freeId, onPut }: Props) {
  const metal = useSignal<MakeUp['metal']>('copper')
  const build = useSignal<MakeUp['build']>('twisted')
  const strands = useSignal(7)
  const strandMm = useSignal(0.2)
  const refusal = useSignal('')
  const add = () => {
    const name = `Own wire, ${strands.value} strands of ${strandMm.value} mm ${metal.value.replaceAll('-', ' ')}`
    const gauge = { strandMm: strandMm.value }
    const makeUp = { metal: metal.value, build: build.value, strands: strands.value, gauge }
    refusal.value = refusalOf(wireFromMakeUp({ id: freeId('own-wire'), name, ...makeUp }), onPut)
  }
  return (
    <OnDemand title="A wire of my own, from a cut end">
      <SelectField
        label="Metal"
        value={metal.value}
        options={METAL_OPTIONS}
        onCommit={(each) => {
          metal.value = each
        }}
      />
      <SelectField
        label="Build"
        value={build.value}
        options={options(BUILD_WORDS)}
        onCommit={(each) => {
          build.value = each
        }}
      />
      <Figure store={store} label="Strands in one wire" quantity="count" of={strands} />
      <Figure store={store} label="Diameter of a strand" quantity="strandMm" of={strandMm} />
      <button type="button" onClick={add}>
        Add this wire
      </button>
      <Refusal words={refusal.value} />
    </OnDemand>
  )
}

/** A known wire with what a meter read of a known length of it: its resistance then has the spread of the meter. */
export function WireFromMeter({ store, freeId, onPut, wire }: Props & { readonly wire: Wire }) {
  const lengthM = useSignal(100)
  const loopOhms = useSignal<number | undefined>(undefined)
  const meterPct = useSignal(2)
  const refusal = useSignal('')
  const add = () => {
    const own = { ...wire, id: freeId(wire.id), name: `${wire.name}, measured` }
    const { weather, wireTempC: tempC } = store.plan.value
    const read = loopOhms.value === undefined ? {} : { loopOhms: loopOhms.value }
    const reading = { lengthM: lengthM.value, ...read, tempC, weather, meterPct: meterPct.value }
    refusal.value = refusalOf(wireFromReading(own, reading), onPut)
  }
  return (
    <OnDemand title="I measured this wire">
      <p class="soft">
        Twist the far ends of a known length together, and read the ohms at the near end. The wire is taken to
        be as warm as the plan says.
      </p>
      <Figure store={store} label="Length measured" quantity="lengthM" of={lengthM} />
      <Figure store={store} label="The meter read" quantity="ohm" of={loopOhms} />
      <Figure store={store} label="Meter and length are within ±" quantity="pct" of={meterPct} />
      <button type="button" onClick={add}>
        Add it as measured
      </button>
      <Refusal words={refusal.value} />
    </OnDemand>
  )
}

interface Held<T> {
  value: T
}

function Figure(props: {
  readonly store: Store
  readonly label: string
  readonly quantity: 'count' | 'strandMm' | 'lengthM' | 'ohm' | 'pct'
  readonly of: Held<number> | Held<number | undefined>
}) {
  return (
    <NumberField
      label={props.label}
      quantity={props.quantity}
      system={props.store.units.value}
      value={props.of.value}
      onCommit={(given) => {
        props.of.value = given
        return []
      }}
    />
  )
}

const Refusal = ({ words }: { words: string }) =>
  words ? (
    <p class="refusal" role="alert">
      {words}
    </p>
  ) : null

/** Puts a wire in the plan; why it could not, in a sentence; empty where it did. */
function refusalOf(made: Result<Wire>, onPut: Props['onPut']): string {
  const problems = made.ok ? onPut(made.value) : made.problems
  return problems[0]?.message ?? ''
}
