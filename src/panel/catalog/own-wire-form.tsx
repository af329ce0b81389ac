import { useSignal } from '@preact/signals'
import { type BUILDS, type INSULATIONS, type MakeUp, METALS, wireFromMakeUp } from '../../catalog/own-wire'
import type { Wire } from '../../catalog/wire'
import { wireFromReading } from '../../catalog/wire-reading'
import type { Problem } from '../../problem'
import type { Store } from '../../state/store'
import { howToMeasure } from '../../words/measuring-words'
import { OnDemand } from '../question'
import { SelectField, SelectFieldOf } from '../select-field'
import { FormFigure, Refusal, refusalOf } from './reading-fields'

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

const INSULATION_WORDS: Readonly<Record<keyof typeof INSULATIONS, string>> = {
  usual: 'as usual for that',
  polyethylene: 'polyethylene',
  foam: 'foamed polyethylene',
  vinyl: 'vinyl (PVC)',
  rubber: 'rubber',
  fluoropolymer: 'fluoropolymer',
}

const options = <K extends string>(words: Readonly<Record<K, string>>) =>
  (Object.keys(words) as K[]).map((value) => ({ value, text: words[value] }))

const METAL_OPTIONS = (Object.keys(METALS) as (keyof typeof METALS)[]).map((value) => ({
  value,
  text: value.replaceAll('-', ' '),
}))

const GAUGE_WORDS = { strand: 'a strand’s diameter', awg: 'American gauge (AWG)' } as const

/** A wire of the person's own from what a cut end shows: its metal, its strands and their size, what lies round them. */
export function WireFromCutEnd({ store, freeId, onPut }: Props) {
  const metal = useSignal<MakeUp['metal']>('copper')
  const build = useSignal<MakeUp['build']>('twisted')
  const insulation = useSignal<NonNullable<MakeUp['insulation']>>('usual')
  const strands = useSignal(7)
  const by = useSignal<keyof typeof GAUGE_WORDS>('strand')
  const strandMm = useSignal(0.2)
  const awg = useSignal(24)
  const spacingMm = useSignal<number | undefined>(undefined)
  const nanoFPerKm = useSignal<number | undefined>(undefined)
  const refusal = useSignal('')
  const isBare = build.value === 'bare-apart'
  const add = () => {
    const byGauge = by.value === 'awg'
    const size = byGauge ? `${awg.value} AWG` : `${strandMm.value} mm`
    const each = metal.value.replaceAll('-', ' ')
    const name = `Own wire, ${strands.value} ${strands.value === 1 ? 'strand' : 'strands'}, ${size} ${each}`
    const made = wireFromMakeUp({
      id: freeId('own-wire'),
      name,
      metal: metal.value,
      build: build.value,
      insulation: insulation.value,
      strands: strands.value,
      gauge: byGauge ? { awg: awg.value } : { strandMm: strandMm.value },
      ...(isBare && spacingMm.value !== undefined && { spacingMm: spacingMm.value }),
      ...(nanoFPerKm.value !== undefined && { nanoFPerKm: nanoFPerKm.value }),
    })
    refusal.value = refusalOf(made, onPut)
  }
  return (
    <OnDemand title="A wire of my own, from a cut end">
      <SelectFieldOf label="Metal" of={metal} options={METAL_OPTIONS} />
      <SelectFieldOf label="Build" of={build} options={options(BUILD_WORDS)} />
      <FormFigure store={store} label="Strands in one wire" quantity="count" of={strands} />
      <SelectFieldOf label="Its size is known by" of={by} options={options(GAUGE_WORDS)} />
      {by.value === 'awg' ? (
        <FormFigure store={store} label="Gauge of one wire, AWG" quantity="ratio" of={awg} />
      ) : (
        <FormFigure store={store} label="Diameter of a strand" quantity="strandMm" of={strandMm} />
      )}
      {isBare ? (
        <FormFigure store={store} label="Wires apart by" quantity="strandMm" of={spacingMm} optional />
      ) : (
        <SelectFieldOf label="Insulation" of={insulation} options={options(INSULATION_WORDS)} />
      )}
      <FormFigure
        store={store}
        label="Capacitance, if it is known"
        quantity="nanoFPerKm"
        of={nanoFPerKm}
        optional
      />
      <button type="button" onClick={add}>
        Add this wire
      </button>
      <Refusal words={refusal.value} />
    </OnDemand>
  )
}

/** What a meter reads of a length of wire. */
const READINGS = {
  loopOhms: { words: 'ohms of the loop', quantity: 'ohm', how: 'loopOhmPerKm' },
  nanoF: { words: 'capacitance', quantity: 'nanoF', how: 'nanoFPerKm' },
  kOhms: { words: 'insulation', quantity: 'kOhm', how: 'dryMicroSPerKm' },
} as const

/** A known wire with what a meter read of a known length of it: that figure then has the spread of the meter. */
export function WireFromMeter({ store, freeId, onPut, wire }: Props & { readonly wire: Wire }) {
  const lengthM = useSignal(100)
  const what = useSignal<keyof typeof READINGS>('loopOhms')
  const value = useSignal<number | undefined>(undefined)
  const weather = useSignal(store.plan.peek().weather)
  const tempC = useSignal(store.plan.peek().wireTempC)
  const meterPct = useSignal(2)
  const refusal = useSignal('')
  const { quantity, how } = READINGS[what.value]
  const add = () => {
    const own = { ...wire, id: freeId(wire.id), name: `${wire.name}, measured` }
    const read = value.value === undefined ? {} : { [what.value]: value.value }
    const conditions = { lengthM: lengthM.value, tempC: tempC.value, weather: weather.value }
    refusal.value = refusalOf(
      wireFromReading(own, { ...read, ...conditions, meterPct: meterPct.value }),
      onPut,
    )
  }
  return (
    <OnDemand title="I measured this wire">
      <SelectField
        label="What was read"
        value={what.value}
        options={(Object.keys(READINGS) as (keyof typeof READINGS)[]).map((each) => ({
          value: each,
          text: READINGS[each].words,
        }))}
        onCommit={(each) => {
          what.value = each
          value.value = undefined
        }}
      />
      <p class="soft">{howToMeasure(how)}</p>
      <FormFigure store={store} label="Length measured" quantity="lengthM" of={lengthM} />
      <FormFigure store={store} label="The meter read" quantity={quantity} of={value} />
      {what.value === 'loopOhms' ? (
        <FormFigure store={store} label="The wire was at" quantity="tempC" of={tempC} />
      ) : (
        <SelectFieldOf
          label="The wire was"
          of={weather}
          options={[
            { value: 'dry', text: 'dry' },
            { value: 'wet', text: 'wet' },
          ]}
        />
      )}
      <FormFigure store={store} label="Meter and length are within ±" quantity="pct" of={meterPct} />
      <button type="button" onClick={add}>
        Add it as measured
      </button>
      <Refusal words={refusal.value} />
    </OnDemand>
  )
}
