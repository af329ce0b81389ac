import './best-places.css'
import { useSignal } from '@preact/signals'
import { useEffect, useMemo } from 'preact/hooks'
import { leastMargin } from '../../budget/verdict'
import { isolated } from '../../isolated'
import { farJobs } from '../../jobs/far-jobs'
import { stationsOfCircuit } from '../../plan/circuit-topology'
import type { StationId } from '../../plan/id'
import { type Circuit, type Plan, stationName } from '../../plan/plan'
import { putThing, type SpotFound, type Thing } from '../../report/best-places'
import { sparePct } from '../../report/remedy-ranking'
import type { ReportCircuit } from '../../report/report'
import { newLineId, newStationId } from '../../state/new-id'
import type { Store } from '../../state/store'
import { equipmentUsedLast } from '../../state/used-last'
import { underWatch } from '../../storage/under-watch'
import { spareWords, spotWords } from '../../words/spot-words'
import { Question } from '../question'
import { SelectField } from '../select-field'
import { VerdictMark } from '../verdict-mark'

interface Props {
  readonly store: Store
  readonly circuit: Circuit
  readonly found: ReportCircuit
}

interface Choice {
  readonly value: string
  readonly text: string
  readonly thing: Thing
}

/** More stations than these would make a list that nobody reads: who wants another joins it by hand. */
const MOST_STATIONS = 40

/** What can be put somewhere on a circuit: its supply, a ringdown unit, or the joint from which a line leads to one station more. */
function choicesFor({ store, circuit }: Props): readonly Choice[] {
  const plan = store.plan.value
  const supplies = store.choices.supplies.value
  const own = supplies.find(({ id }) => id === circuit.supply?.type)
  const units = supplies.filter(({ kind, id }) => kind === 'ringdown' && id !== own?.id)
  const onIt = new Set(stationsOfCircuit(plan, circuit))
  const wire = plan.lines.get(circuit.lines[0]!)?.wire ?? ''
  const set = [...circuit.sets.values()].at(-1) ?? equipmentUsedLast(store, plan).set
  return [
    ...(own
      ? [
          {
            value: own.id,
            text: `its supply, ${isolated(own.name)}`,
            thing: { kind: 'supply', type: own.id } as const,
          },
        ]
      : []),
    ...units.map(
      ({ id, name }): Choice => ({
        ...{ value: id, text: isolated(name) },
        thing: { kind: 'supply', type: id },
      }),
    ),
    ...[...plan.stations.keys()]
      .filter((station) => !onIt.has(station))
      .slice(0, MOST_STATIONS)
      .map(
        (to: StationId): Choice => ({
          ...{ value: `tap ${to}`, text: `a joint for a line to ${stationName(plan, to)}` },
          thing: { kind: 'tap', to, set, wire },
        }),
      ),
  ]
}

/** Where on a circuit a supply, a ringdown unit or a joint would leave the widest margin: tried with the engine, numbered on the map. */
export function BestPlaces(props: Props) {
  const { store, circuit, found } = props
  const chosen = useSignal('')
  const spots = useSignal<{
    readonly plan: Plan
    readonly thing: Thing
    readonly list: readonly SpotFound[]
  } | null>(null)
  const refusal = useSignal('')
  const jobs = useMemo(() => farJobs('The search for the best place'), [])
  useEffect(
    () => () => {
      jobs.dispose()
      store.spots.value = []
    },
    [],
  )
  const plan = store.settled.value
  const holds = spots.value?.plan === plan
  useEffect(() => {
    if (!holds) store.spots.value = []
  }, [holds])
  const choices = choicesFor(props)
  const choice = choices.find(({ value }) => value === chosen.value) ?? choices[0]
  if (!choice || circuit.over) return null
  const say = store.tongue.value
  const now = leastMargin(found.worst)
  const nowPct = now ? sparePct(now.nepers) : null

  const seek = async () => {
    const { thing } = choice
    const sought = store.settled.peek()
    refusal.value = ''
    jobs.setGrids(store.ground.peek()?.grids ?? [])
    const kinds = thing.kind === 'supply' ? 'supplies' : 'sets'
    const known = store.withChosen(sought, kinds, thing.kind === 'supply' ? thing.type : thing.set)
    const result = await underWatch(store.work, 'Trying places', (watch) =>
      jobs.ask(
        'places',
        { plan: known, circuit: circuit.id, thing },
        {
          signal: watch.signal,
          about: () => [store.settled.peek()],
        },
      ),
    )
    if (!result) return
    if (!result.ok) {
      refusal.value = result.problems[0]!.message
      return
    }
    spots.value = { plan: sought, thing, list: result.value }
    store.spots.value = result.value.map(({ spot }) =>
      spot.kind === 'wire' ? spot.position : sought.stations.get(spot.id)!.position,
    )
  }
  const put = ({ thing, list }: NonNullable<typeof spots.value>, index: number) => {
    const spot = list[index]!
    if (!store.mayEdit()) return
    store.edit((before) => {
      const ids = { station: newStationId(before), secondHalf: newLineId(before), line: newLineId(before) }
      const kinds = thing.kind === 'supply' ? 'supplies' : 'sets'
      const known = store.withChosen(before, kinds, thing.kind === 'supply' ? thing.type : thing.set)
      return putThing(known, circuit.id, thing, spot.spot, ids)
    })
    store.spots.value = []
    store.tell(`Put ${spotWords(spot, say)}`)
  }

  return (
    <Question ask="Where on it would something do best?">
      <SelectField
        label="What"
        value={choice.value}
        options={choices}
        onCommit={(value) => {
          chosen.value = value
          spots.value = null
        }}
      />
      {refusal.value && (
        <p class="fails" role="alert">
          {refusal.value}
        </p>
      )}
      {spots.value && holds ? (
        <ol class="spots">
          {spots.value.list.map((each, i) => (
            <li key={i}>
              <VerdictMark verdict={each.verdict} bare /> <VerdictMark verdict={each.worst} bare />{' '}
              <b>{spotWords(each, say)}</b>: {spareWords(each, i === 0 ? nowPct : null, say)}.{' '}
              {standsAlready(circuit, spots.value!.thing, each) ? (
                'It stands there now.'
              ) : (
                <button
                  type="button"
                  aria-label={`Put it there, ${spotWords(each, say)}`}
                  onClick={() => put(spots.value!, i)}
                >
                  Put it there
                </button>
              )}
            </li>
          ))}
        </ol>
      ) : (
        <div class="acts">
          <button type="button" onClick={() => void seek()}>
            Try every place
          </button>
        </div>
      )}
    </Question>
  )
}

const standsAlready = ({ supply }: Circuit, thing: Thing, { spot }: SpotFound): boolean =>
  thing.kind === 'supply' && spot.kind === 'station' && supply?.at === spot.id && supply.type === thing.type
