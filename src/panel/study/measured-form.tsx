import { useSignal } from '@preact/signals'
import { withFigure } from '../../catalog/entry-value'
import { withSources } from '../../catalog/sourced'
import type { Supply } from '../../catalog/supply'
import type { TelephoneSet } from '../../catalog/telephone-set'
import type { Wire } from '../../catalog/wire'
import { type WireReading, wireFromReading } from '../../catalog/wire-reading'
import type { CircuitId, LineId, StationId } from '../../plan/id'
import { type Measured, takeMeasured } from '../../plan/measured-edits'
import { type Circuit, lineName, stationName } from '../../plan/plan'
import { bad, ok, type Result } from '../../problem'
import type { Store } from '../../state/store'
import { figureName } from '../../words/figure-names'
import { howToMeasure } from '../../words/measuring-words'
import type { TipGroup } from '../../words/odds-words'
import { FIGURES, labelOf } from '../catalog/entry-figures'
import { FormFigure, Refusal, refusalOf } from '../catalog/reading-fields'
import { SelectFieldOf } from '../select-field'

interface Props {
  readonly store: Store
  readonly id: CircuitId
  readonly tip: TipGroup
  /** The figure is in the plan. */
  readonly onTaken: () => void
}

const ALL = ''

/** What a meter reads of a length of wire, for the figures that are per kilometre. */
const READINGS: Readonly<
  Record<string, { readonly read: 'loopOhms' | 'nanoF' | 'kOhms'; readonly wet?: true }>
> = {
  loopOhmPerKm: { read: 'loopOhms' },
  nanoFPerKm: { read: 'nanoF' },
  wetNanoFPerKm: { read: 'nanoF', wet: true },
  dryMicroSPerKm: { read: 'kOhms' },
  wetMicroSPerKm: { read: 'kOhms', wet: true },
  wornMicroSPerKm: { read: 'kOhms', wet: true },
}
const READ_QUANTITY = { loopOhms: 'ohm', nanoF: 'nanoF', kOhms: 'kOhm' } as const

/** One of the things that a tip is about, under the words that a person chooses it by. */
interface Thing {
  readonly key: string
  readonly words: string
  readonly measured: Measured
}

/** A figure that a person has measured, in the place of the printed one: for just that station or line, or for all such. */
export function MeasuredForm({ store, id, tip, onTaken }: Props) {
  const plan = store.plan.value
  const circuit = plan.circuits.get(id)
  const things = circuit ? thingsOf(store, circuit, tip) : []
  const chosen = useSignal(things[0]?.key ?? ALL)
  const value = useSignal<number | undefined>(undefined)
  const meterPct = useSignal(3)
  const lengthM = useSignal(100)
  const tempC = useSignal(plan.wireTempC)
  const refusal = useSignal('')
  const figure = FIGURES.find(({ at }) => at === tip.what)
  const reading = READINGS[tip.what]
  if (!figure || things.length === 0) return null

  const measuredOf = (measured: Measured): Result<Measured> => {
    const entry = withSources<Wire | TelephoneSet | Supply>(measured.entry)
    if (reading && measured.kind === 'wire') {
      const read = value.value === undefined ? {} : { [reading.read]: value.value }
      const { what } = tip
      const made = wireFromReading(entry as Wire, {
        ...read,
        lengthM: lengthM.value,
        tempC: tempC.value,
        weather: reading.wet ? 'wet' : 'dry',
        worn: what === 'wornMicroSPerKm',
        meterPct: meterPct.value,
      } satisfies WireReading)
      return made.ok ? ok({ ...measured, entry: made.value }) : made
    }
    if (value.value === undefined)
      return bad({
        code: 'out-of-range',
        at: tip.what,
        message: 'Nothing was read yet: type what the meter says.',
      })
    const typed = { at: tip.what, value: value.value, meterPct: meterPct.value }
    return ok({ ...measured, entry: withFigure(entry, typed) } as Measured)
  }
  const take = () => {
    const measured = things.find(({ key }) => key === chosen.value)?.measured
    if (!measured) return
    refusal.value = refusalOf(measuredOf(measured), (made) =>
      store.tryEdit((before) => takeMeasured(before, made)),
    )
    if (refusal.value) return
    store.tell(`Now as measured: ${figureName(tip.what)}.`)
    onTaken()
  }
  const how = howToMeasure(tip.what)
  return (
    <div class="measured">
      {how && <p class="soft">{how}</p>}
      {things.length > 1 && (
        <SelectFieldOf
          label="It is that of"
          of={chosen}
          options={things.map(({ key, words }) => ({ value: key, text: words }))}
        />
      )}
      {reading && <FormFigure store={store} label="Length measured" quantity="lengthM" of={lengthM} />}
      <FormFigure
        store={store}
        label={reading ? 'The meter read' : labelOf(figureName(tip.what))}
        quantity={reading ? READ_QUANTITY[reading.read] : figure.quantity}
        of={value}
      />
      {reading?.read === 'loopOhms' && (
        <FormFigure store={store} label="The wire was at" quantity="tempC" of={tempC} />
      )}
      <FormFigure store={store} label="It is within ±" quantity="pct" of={meterPct} />
      <button type="button" onClick={take}>
        Use it
      </button>
      <Refusal words={refusal.value} />
    </div>
  )
}

/** The things that a tip is about, one by one where each may be another, and all such together. */
function thingsOf(store: Store, circuit: Circuit, { entry: id, at }: TipGroup): readonly Thing[] {
  const plan = store.plan.value
  const { wires, sets, supplies } = store.catalog.value
  const [wire, set, supply] = [wires.get(id), sets.get(id), supplies.get(id)]
  const stations = (at as readonly StationId[]).filter((station) => circuit.sets.get(station) === id)
  if (at.length === 0 && wire) {
    const lines = circuit.lines.filter((line) => plan.lines.get(line)?.wire === id)
    // A stock is of one wire: what is cut from it cannot be another's.
    const single = plan.stock.some((each) => each.wire === id) ? [] : lines
    const one = (of: LineId): Thing => ({
      key: of,
      words: `${lineName(plan, plan.lines.get(of)!)} only`,
      measured: { kind: 'wire', entry: wire, of },
    })
    const all: Thing = {
      key: ALL,
      words: 'all such wire',
      measured: { kind: 'wire', entry: wire, of: 'all' },
    }
    return [all, ...single.map(one)]
  }
  if (set && stations.length > 0) {
    const one = (station: StationId): Thing => ({
      key: station,
      words: `the set at ${stationName(plan, station)}`,
      measured: { kind: 'set', entry: set, of: { circuit: circuit.id, station } },
    })
    return [
      ...stations.map(one),
      { key: ALL, words: 'all such sets', measured: { kind: 'set', entry: set, of: 'all' } },
    ]
  }
  if (supply && circuit.supply?.type === id)
    return [
      {
        key: circuit.id,
        words: `the supply at ${stationName(plan, circuit.supply.at)}`,
        measured: { kind: 'supply', entry: supply, of: circuit.id },
      },
      { key: ALL, words: 'all such supplies', measured: { kind: 'supply', entry: supply, of: 'all' } },
    ]
  return []
}
