import { parsePlace } from '../../geo/parse-place'
import { placeText } from '../../geo/place-text'
import type { Position } from '../../geo/position'
import type { StationId } from '../../plan/id'
import { stationName } from '../../plan/plan'
import type { Store } from '../../state/store'
import { formatLengthM } from '../../words/units'
import { SelectField } from '../select-field'
import { TextField } from '../text-field'
import type { HalfMark } from './half-mark'

interface Props {
  readonly store: Store
  readonly marks: readonly HalfMark[]
  /** By how much each misses its place, m. */
  readonly missedM: readonly (number | undefined)[]
  readonly picked: number
  readonly onPick: (index: number) => void
  readonly onPlace: (index: number, position: Position) => void
  readonly onRemove: (index: number) => void
}

/** The marks of a picture, each with its place on the ground and what it misses; the worst is marked. */
export function FitMarks({ store, marks, missedM, picked, onPick, onPlace, onRemove }: Props) {
  if (marks.length === 0) return null
  const worstM = Math.max(0, ...missedM.map((each) => each ?? 0))
  const mark = marks[picked]
  return (
    <>
      <table class="fit-marks">
        <thead>
          <tr>
            <th>Mark</th>
            <th>Place</th>
            <th>Misses by</th>
            <td />
          </tr>
        </thead>
        <tbody>
          {marks.map(({ position }, i) => {
            const missed = missedM[i]
            const isWorst = missed !== undefined && missed === worstM && worstM > 0.05
            return (
              <tr key={i} class={isWorst ? 'worst' : undefined}>
                <td>
                  <button
                    type="button"
                    aria-pressed={i === picked}
                    aria-label={`Mark ${i + 1}`}
                    onClick={() => onPick(i)}
                  >
                    {i + 1}
                  </button>
                </td>
                <td>{position ? placeText(position, store.placeForm.value) : 'not given yet'}</td>
                <td>
                  {missed !== undefined && formatLengthM(missed, store.units.value)}
                  {isWorst && ' – the worst'}
                </td>
                <td>
                  <button type="button" aria-label={`Remove mark ${i + 1}`} onClick={() => onRemove(i)}>
                    Remove
                  </button>
                </td>
              </tr>
            )
          })}
        </tbody>
      </table>
      {mark && (
        <PlaceOfMark
          key={picked}
          store={store}
          mark={mark}
          number={picked + 1}
          onPlace={(position) => onPlace(picked, position)}
        />
      )}
    </>
  )
}

interface PlaceProps {
  readonly store: Store
  readonly mark: HalfMark
  readonly number: number
  readonly onPlace: (position: Position) => void
}

/** Where a mark lies: typed, a station, or pointed out on the map. */
function PlaceOfMark({ store, mark, number, onPlace }: PlaceProps) {
  const stations = [...store.plan.value.stations.values()]
  const isPointing = store.placeWanted.value !== null
  return (
    <fieldset>
      <legend>Where mark {number} lies</legend>
      <TextField
        label="Latitude and longitude, grid reference or UTM"
        value={mark.position ? placeText(mark.position, store.placeForm.value) : ''}
        pause
        refuse={(text) => {
          if (text === '') return undefined
          const place = parsePlace(text)
          return place.ok ? undefined : place.problems[0]!.message
        }}
        onCommit={(text) => {
          const place = parsePlace(text)
          if (text !== '' && place.ok) onPlace(place.value)
        }}
      />
      {stations.length > 0 && (
        <SelectField
          label="At a station"
          value=""
          options={[
            { value: '', text: '–' },
            ...stations.map(({ id }) => ({ value: id as string, text: stationName(store.plan.value, id) })),
          ]}
          onCommit={(id) => {
            const station = store.plan.peek().stations.get(id as StationId)
            if (station) onPlace(station.position)
          }}
        />
      )}
      <div class="acts">
        <button
          type="button"
          aria-pressed={isPointing}
          onClick={() => {
            store.placeWanted.value = isPointing
              ? null
              : (position) => {
                  store.placeWanted.value = null
                  onPlace(position)
                }
          }}
        >
          {isPointing ? 'Now press the place on the map' : 'Point it out on the map'}
        </button>
      </div>
    </fieldset>
  )
}
