import { useSignal } from '@preact/signals'
import { useEffect, useMemo, useRef } from 'preact/hooks'
import type { Evidence } from '../../fault/evidence'
import type { FaultFound } from '../../fault/locate'
import type { NextStep } from '../../fault/next-step'
import { circuitJobs } from '../../jobs/circuit-jobs'
import { whenStill } from '../../jobs/when-still'
import { pointAtWireM } from '../../measure/place-on-line'
import { recordsOf } from '../../plan/field-records'
import type { CircuitId, LineId } from '../../plan/id'
import { standingRecords } from '../../plan/standing-records'
import type { CircuitStudy } from '../../state/circuit-study'
import type { Store } from '../../state/store'
import {
  bandSentence,
  kindSentence,
  nextSentence,
  placeSentence,
  unusedSentence,
} from '../../words/found-words'
import { recordWords } from '../../words/record-words'
import type { Tongue } from '../../words/tongue'
import { SelectFieldOf } from '../select-field'
import { ExpectedReadings } from './expected-readings'
import { KNOWN_KINDS, type KnownKind, kindOf } from './known-kinds'
import { endsOf, evidenceOf, type KnownLine, type Measuring, placesOf } from './known-lines'
import { KnownRow } from './known-row'
import { MeasuredBy } from './measured-by'

const KINDS = Object.entries(KNOWN_KINDS).map(([value, { text }]) => ({ value: value as KnownKind, text }))

interface Props {
  readonly store: Store
  readonly study: CircuitStudy
  readonly id: CircuitId
}

type Answer = { readonly found: FaultFound } | { readonly refused: string } | 'reckoning' | null

/** Most places and steps that are told: who wants more measures first. */
const TOLD = 3

/** One question, whatever is known of a faulty circuit: where the fault lies, and what would tell more. */
export function FaultFinder({ store, study, id }: Props) {
  const known = useSignal<readonly KnownLine[]>([])
  const answer = useSignal<Answer>(null)
  const nextKey = useRef(0)
  const adding = useSignal<KnownKind>('open')
  const by = useSignal<Measuring>({})
  const say = store.tongue.value
  const rows = known.value.map((row) => settled(study, row, say))
  const before = useRef<ReadonlySet<string> | null>(null)
  before.current ??= new Set(recordsOf(study.plan).map((record) => record.id))
  const named = new Set(rows.flatMap(({ kind, at }) => (kind === 'record' ? [at] : [])))
  const walked = readingsSince(study, before.current).filter((record) => !named.has(record.id))
  const evidence = [
    ...rows.flatMap((row) => evidenceOf(study, row, by.value) ?? []),
    ...walked.map((record): Evidence => ({ record: record.id })),
  ]
  const jobs = useMemo(() => circuitJobs('The search for the fault'), [])
  useEffect(() => () => jobs.dispose(), [])
  useEffect(() => {
    if (evidence.length === 0) {
      answer.value = null
      return undefined
    }
    answer.value = 'reckoning'
    const { plan, measured } = study
    return whenStill(async (signal) => {
      const result = await jobs.ask('locate', { plan, measured, circuit: id, evidence }, { signal })
      if (!result) return
      const found = result.ok ? result.value : result
      answer.value = found.ok ? { found: found.value } : { refused: found.problems[0]!.message }
    })
  }, [study, JSON.stringify(evidence)])

  const found =
    answer.value && typeof answer.value === 'object' && 'found' in answer.value && answer.value.found
  const [likeliest] = (found && found.nothingWrong <= 0.5 && found.places) || []
  useEffect(() => {
    const line = likeliest && study.plan.lines.get(likeliest.line as LineId)
    store.faultPlace.value = line
      ? pointAtWireM(study.plan, study.measured.get(line.id)!, line, likeliest.middleM).position
      : null
    return () => {
      store.faultPlace.value = null
    }
  }, [likeliest?.line, likeliest?.middleM])
  useEffect(() => {
    const isWrong = found && found.nothingWrong <= 0.5
    store.fault.value = isWrong ? { circuit: id, found, measured: study.measured } : null
    return () => {
      store.fault.value = null
    }
  }, [found])

  const lastStation = rows.findLast(({ at }) => study.model.stations.includes(at))?.at
  const add = () => {
    const key = nextKey.current++
    const [first] = study.model.stations
    known.value = [...known.value, { key, kind: adding.value, at: first ?? '', toward: '', said: '' }]
  }
  return (
    <>
      <p>
        Before you measure: disconnect the supply, take every set and every branch off the line, open a ring,
        and let nobody crank. Ringing volts hurt, and they ruin the meter. Keep off the line in a
        thunderstorm.
      </p>
      <h3>What do you know?</h3>
      <ol class="known">
        {rows.map((row) => (
          <KnownRow
            key={row.key}
            study={study}
            row={row}
            system={store.units.value}
            say={say}
            onChange={(changed) => {
              known.value = known.value.map((each) => (each.key === row.key ? { ...row, ...changed } : each))
            }}
            onRemove={() => {
              known.value = known.value.filter((each) => each.key !== row.key)
            }}
          />
        ))}
      </ol>
      {walked.map((record) => (
        <p key={record.id}>{recordWords(record, say)}.</p>
      ))}
      <SelectFieldOf label="Something more" of={adding} options={KINDS} />
      <button type="button" onClick={add}>
        Add what is known
      </button>
      {rows.some(({ kind }) => kindOf(kind).figures.length > 0) && (
        <MeasuredBy
          by={by.value}
          system={store.units.value}
          onChange={(changed) => {
            by.value = changed
          }}
        />
      )}
      <div class="found" role="status">
        <Told store={store} study={study} answer={answer.value} />
      </div>
      <ExpectedReadings study={study} from={lastStation ?? study.model.stations[0] ?? ''} />
    </>
  )
}

/** What was read on the lines of the circuit since the finder was opened: whoever walks reads for it. */
const readingsSince = ({ plan, model }: CircuitStudy, before: ReadonlySet<string>) => {
  const lines = new Set<string>(model.lines.map(({ id }) => id))
  return standingRecords(plan).filter(
    ({ kind, line, id }) => kind === 'reading' && lines.has(line) && !before.has(id),
  )
}

/** A row whose places are still there: a station or a tag may be gone since. */
function settled(study: CircuitStudy, row: KnownLine, say: Tongue): KnownLine {
  const pick = (options: readonly { readonly value: string }[], value: string) =>
    options.some((each) => each.value === value) ? value : (options[0]?.value ?? '')
  const at = pick(placesOf(study, row.kind, say), row.at)
  const said = pick(kindOf(row.kind).answers ?? [], row.said)
  return { ...row, at, toward: pick(endsOf(study, row.kind, at), row.toward), said }
}

function Told({ store, study, answer }: Omit<Props, 'id'> & { answer: Answer }) {
  const { plan, measured } = study
  const say = store.tongue.value
  if (answer === null) return null
  if (answer === 'reckoning') return <p class="soft">Reckoning…</p>
  if ('refused' in answer) return <p>{answer.refused}</p>
  const { found } = answer
  const isWrong = found.nothingWrong <= 0.5
  return (
    <>
      <p>
        <strong>{kindSentence(found)}</strong>
      </p>
      {isWrong && found.places.length > 0 && (
        <>
          <ul>
            {found.places.slice(0, TOLD).map((place) => (
              <li key={`${place.line} ${place.fromM}`}>{placeSentence(plan, measured, place, say)}</li>
            ))}
          </ul>
          {found.band && <p>{bandSentence(plan, found.band, say)}</p>}
          <p class="soft">
            The map shows it: the broader the shade, the likelier; between the two bars it is 19 times of 20.
          </p>
        </>
      )}
      {found.unused.map((index) => (
        <p key={index} class="soft">
          {unusedSentence(index)}
        </p>
      ))}
      {found.next.length > 0 && (
        <>
          <h3>What to do next</h3>
          <ol>
            {found.next.slice(0, TOLD).map((step) => {
              const words = nextSentence(plan, measured, step, say)
              const line = lineTo(study, step)
              return (
                <li key={words}>
                  {words}{' '}
                  {line && (
                    <button
                      type="button"
                      onClick={() => {
                        store.walkingTo.value = line.wireM
                        store.walking.value = line.id
                      }}
                    >
                      Walk there
                    </button>
                  )}
                </li>
              )
            })}
          </ol>
        </>
      )}
    </>
  )
}

/** The line to walk to a step's place, and how far along it: at a station, the first of the circuit that ends there. */
function lineTo({ plan, measured, model }: CircuitStudy, { at }: NextStep) {
  if (typeof at !== 'string') return { id: at.line as LineId, wireM: at.wireM }
  const line = model.lines
    .map(({ id }) => plan.lines.get(id as LineId))
    .find((each) => each?.from === at || each?.to === at)
  return line && { id: line.id, wireM: line.from === at ? 0 : measured.get(line.id)!.wireM }
}
