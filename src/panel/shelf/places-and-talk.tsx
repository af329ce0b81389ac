import type { Signal } from '@preact/signals'
import { SOILS } from '../../catalog/soils'
import { isolated } from '../../isolated'
import { everyPair } from '../../shelf/shelf'
import { MOST_PLACES } from '../../shelf/shelf-schema'
import { MOST_SOUGHT } from '../../shelf/ways'
import type { Store } from '../../state/store'
import { NumberField } from '../number-field'
import { SelectField, SelectFieldOf } from '../select-field'
import { TextField } from '../text-field'
import { Tick } from '../tick'
import { distanceOf, placeNames, talkingPairs, type Wanted } from './wanted'

/** Typed distances grow as the square of the places: so many are still typed by hand. */
const MOST_TYPED = 8
const DISTANCE_M = { min: 1, max: 500_000 }

/** Where telephones must stand, and who must reach whom. */
export function PlacesAndTalk({ store, wanted }: { store: Store; wanted: Wanted }) {
  const names = placeNames(store, wanted)
  const { from, talk } = wanted
  const onMap = store.settled.value.stations.size
  return (
    <section aria-label="Where, and who with whom">
      <h2>Where must telephones stand?</h2>
      <SelectField
        label="Places"
        value={from.value}
        options={[
          {
            value: 'map',
            text:
              onMap > MOST_PLACES
                ? `The stations on the map: ${onMap} are too many, ${MOST_PLACES} at most`
                : onMap < 2
                  ? 'The stations on the map: there are no two yet'
                  : `The ${onMap} stations on the map`,
            isBarred: onMap < 2 || onMap > MOST_PLACES,
          },
          { value: 'distances', text: 'No map: I type how far apart they are' },
        ]}
        onCommit={(value) => {
          from.value = value
          talk.value = 'all'
        }}
      />
      {from.value === 'distances' ? (
        <TypedPlaces store={store} wanted={wanted} />
      ) : (
        <p class="soft">
          {names.map(isolated).join(', ')}.{' '}
          {names.length <= MOST_SOUGHT
            ? 'Ways are sought over the ground and round what is drawn in the way, as far as these are known.'
            : `Between more than ${MOST_SOUGHT} places lines are taken straight.`}
        </p>
      )}
      <h2>Who must reach whom?</h2>
      <SelectField
        label="Calls"
        value={String(talk.value)}
        options={[
          { value: 'all', text: 'Everybody everybody' },
          ...(names.length > 2
            ? [
                ...names.map((name, k) => ({ value: String(k), text: `Everybody ${isolated(name)}` })),
                { value: 'pairs', text: 'Only some with each other' },
              ]
            : []),
        ]}
        onCommit={(value) => {
          talk.value = value === 'all' || value === 'pairs' ? value : Number(value)
        }}
      />
      {talk.value === 'pairs' && (
        <Pairs legend="Who with whom" names={names} pairs={everyPair(names.length)} chosen={wanted.pairs} />
      )}
      <SelectFieldOf
        label="Called how"
        of={wanted.agree}
        options={[
          { value: 'nobody', text: 'All must be rung' },
          { value: 'all', text: 'All may agree on times' },
          ...(names.length > 2 ? [{ value: 'some' as const, text: 'Some may agree on times' }] : []),
        ]}
      />
      {wanted.agree.value === 'some' && (
        <Pairs
          legend="Who may agree on times"
          names={names}
          pairs={talkingPairs(wanted, names.length)}
          chosen={wanted.agreed}
        />
      )}
      <p class="soft">
        Nets are judged in the plan’s own weather, {store.settled.value.weather} with the wire at{' '}
        {store.tongue.value.temp(store.settled.value.wireTempC)}, and in the worst.
      </p>
      {store.onShelf.value.rods.some(({ count }) => count > 0) && (
        <SelectFieldOf
          label="Ground for the rods"
          of={wanted.soil}
          options={SOILS.map(({ id, name }) => ({ value: id, text: name }))}
        />
      )}
    </section>
  )
}

function TypedPlaces({ store, wanted }: { store: Store; wanted: Wanted }) {
  const { names, distancesM } = wanted
  const list = names.value
  return (
    <>
      {list.map((name, k) => (
        <TextField
          key={`${k}`}
          label={`Place ${k + 1}`}
          value={name}
          onCommit={(text) => {
            names.value = list.with(k, text)
          }}
        />
      ))}
      <div class="acts">
        <button
          type="button"
          disabled={list.length >= MOST_TYPED}
          onClick={() => {
            names.value = [...list, `Place ${list.length + 1}`]
          }}
        >
          One place more
        </button>
        <button
          type="button"
          disabled={list.length <= 2}
          onClick={() => {
            names.value = list.slice(0, -1)
          }}
        >
          One fewer
        </button>
      </div>
      {everyPair(list.length).map(([a, b]) => (
        <NumberField
          key={`${a} ${b}`}
          label={`${isolated(list[a]!)} to ${isolated(list[b]!)}, as the wire goes`}
          quantity="lengthM"
          system={store.units.value}
          value={distanceOf(wanted, a, b)}
          limit={DISTANCE_M}
          onCommit={(m) => {
            distancesM.value = new Map(distancesM.value).set(`${a} ${b}`, m)
            return []
          }}
        />
      ))}
    </>
  )
}

function Pairs({
  legend,
  names,
  pairs,
  chosen,
}: {
  legend: string
  names: readonly string[]
  pairs: readonly (readonly [number, number])[]
  chosen: Signal<ReadonlySet<string>>
}) {
  return (
    <fieldset>
      <legend>{legend}</legend>
      {pairs.map(([a, b]) => {
        const key = `${a} ${b}`
        return (
          <Tick
            key={key}
            checked={chosen.value.has(key)}
            onChange={(isTicked) => {
              const next = new Set(chosen.value)
              if (isTicked) next.add(key)
              else next.delete(key)
              chosen.value = next
            }}
          >
            {isolated(names[a]!)} and {isolated(names[b]!)}
          </Tick>
        )
      })}
    </fieldset>
  )
}
