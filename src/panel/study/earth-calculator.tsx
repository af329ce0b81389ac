import { useSignal } from '@preact/signals'
import { rodsOhms } from '../../budget/earth-electrode'
import { EARTH_RODS, type EarthRod, SOILS, type Soil } from '../../catalog/soils'
import { setReturn } from '../../plan/line-edits'
import { type Line, stationName } from '../../plan/plan'
import type { Store } from '../../state/store'
import type { Tongue } from '../../words/tongue'
import { formatOhms } from '../../words/units'
import { NumberField } from '../number-field'
import { OnDemand } from '../question'
import { SelectField } from '../select-field'
import './study.css'

/** The rod formula holds for rods many times longer than thick. */
const LENGTH_M = { min: 0.3, max: 30 }
const DIAMETER_MM = { min: 2, max: 30 }
const RODS = { min: 1, max: 24, whole: true }
const OWN = 'own'

/** What an electrode of rods would resist in a soil, and a way to give it to an end of a line with earth return. */
export function EarthCalculator({ store, line }: { store: Store; line: Line }) {
  const soil = useSignal<Soil>(SOILS[1]!)
  const rod = useSignal({ lengthM: EARTH_RODS[1]!.lengthM, diameterMm: EARTH_RODS[1]!.diameterMm })
  const rods = useSignal(1)
  const system = store.units.value
  const { lengthM, diameterMm } = rod.value
  const ohmsIn = (soilOhmM: number) =>
    rodsOhms({ lengthM, diameterM: diameterMm / 1000 }, soilOhmM, rods.value)
  const ohms = ohmsIn(soil.value.ohmM)
  const set = <T,>(target: { value: T }, value: T) => {
    target.value = value
    return []
  }
  const give = (end: 0 | 1) => {
    const both = [...(line.electrodeOhms ?? [0, 0])] as [number, number]
    both[end] = Number(ohms.toPrecision(2))
    void store.tryEdit((before) => setReturn(before, line.id, 'earth', both))
  }
  const kept = EARTH_RODS.find((each) => each.lengthM === lengthM && each.diameterMm === diameterMm)
  return (
    <OnDemand title="What would an earth rod give?">
      <SelectField
        label="Soil"
        value={soil.value.id}
        options={SOILS.map(({ id, name }) => ({ value: id, text: name }))}
        onCommit={(id) => set(soil, SOILS.find((each) => each.id === id)!)}
      />
      <SelectField
        label="Rod"
        value={kept?.id ?? OWN}
        options={[
          ...EARTH_RODS.map((each) => ({ value: each.id, text: rodWords(each, store.tongue.value) })),
          { value: OWN, text: 'as below' },
        ]}
        onCommit={(id) => set(rod, EARTH_RODS.find((each) => each.id === id) ?? rod.value)}
      />
      <NumberField
        label="Driven length"
        quantity="lengthM"
        system={system}
        value={lengthM}
        limit={LENGTH_M}
        onCommit={(length) => set(rod, { lengthM: length, diameterMm })}
      />
      <NumberField
        label="Diameter"
        quantity="diameterMm"
        system={system}
        value={diameterMm}
        limit={DIAMETER_MM}
        onCommit={(diameter) => set(rod, { lengthM, diameterMm: diameter })}
      />
      <NumberField
        label="Rods, a length apart"
        quantity="count"
        system={system}
        value={rods.value}
        limit={RODS}
        onCommit={(count) => set(rods, count)}
      />
      <p role="status">
        About <strong>{formatOhms(ohms)}</strong>, from {formatOhms(ohmsIn(soil.value.leastOhmM))} to{' '}
        {formatOhms(ohmsIn(soil.value.mostOhmM))} as the soil may be.
      </p>
      <p class="applies">
        {([line.from, line.to] as const).map((station, end) => (
          <button key={station} type="button" onClick={() => give(end as 0 | 1)}>
            Use at {stationName(store.plan.value, station)}
          </button>
        ))}
      </p>
      <p>
        Earth return is not recommended: it hums, it leaks into every other line in the ground, and it changes
        with the weather. Find out what is buried before a rod is driven, and keep away from power earths.
      </p>
      <SoilTable say={store.tongue.value} />
    </OnDemand>
  )
}

/** `Power rod, 2.4 m × 16 mm`. */
const rodWords = ({ name, lengthM, diameterMm }: EarthRod, { height, quantity }: Tongue): string =>
  `${name}, ${height(lengthM)} × ${quantity(diameterMm, 'diameterMm')}`

function SoilTable({ say }: { say: Tongue }) {
  return (
    <OnDemand title="Soils and rods, and where the figures come from">
      <table class="choices">
        <caption>Resistivity, Ω·m</caption>
        <thead>
          <tr>
            <th scope="col">Soil, and source</th>
            <th scope="col">Usual</th>
            <th scope="col">Range</th>
          </tr>
        </thead>
        <tbody>
          {SOILS.map(({ id, name, ohmM, leastOhmM, mostOhmM, source }) => (
            <tr key={id}>
              <th scope="row">
                {name}
                <span class="soft source">{source}</span>
              </th>
              <td>{ohmM}</td>
              <td>
                {leastOhmM}–{mostOhmM}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <ul class="plain soft">
        {EARTH_RODS.map((rod) => (
          <li key={rod.id}>
            {rodWords(rod, say)}: <span class="source">{rod.source}</span>
          </li>
        ))}
        <li>
          One rod: ρ / (2πL) · [ln(8L / d) − 1], H. B. Dwight, AIEE 1936. Several rods: IEEE Std 142, table
          14.
        </li>
      </ul>
    </OnDemand>
  )
}
