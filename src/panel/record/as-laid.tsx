import { useSignal } from '@preact/signals'
import { layAsPlanned, layAsWalked, setUsedWire } from '../../field/as-laid'
import { trackOfLine } from '../../field/track-of-line'
import { placesJobs } from '../../jobs/places-jobs'
import { measureLine } from '../../measure/measure-line'
import { addRecord } from '../../plan/add-record'
import { asLaidOf, asPlanned } from '../../plan/as-laid-records'
import type { Line, Plan } from '../../plan/plan'
import { standingRecords } from '../../plan/standing-records'
import type { ReportLine } from '../../report/report'
import { newRecordId } from '../../state/new-record-id'
import type { Store } from '../../state/store'
import { recordedNow } from '../../state/who-records'
import { chooseFiles } from '../../storage/choose-files'
import { recordWords } from '../../words/record-words'
import { NumberField } from '../number-field'

const WIRE = { min: 1, max: 1e6 }
const TRACK_FILES = '.gpx,application/gpx+xml'

interface Props {
  readonly store: Store
  readonly line: Line
  readonly measured: ReportLine
}

/** Leads a line the way that was walked, from a record or a file, and back; and gives it the wire that was really used. */
export function AsLaid({ store, line, measured }: Props) {
  const why = useSignal('')
  const plan = store.plan.value
  const say = store.tongue.value
  const measure = (of: Plan, each: Line) => measureLine(of, each, store.ground.value)
  const tracks = standingRecords(plan).flatMap((record) =>
    record.kind === 'track' && record.line === line.id ? [record] : [],
  )
  const [last, before] = [asLaidOf(plan, line.id), asPlanned(plan, line)]
  const follow = (track: string) => {
    store.edit((from) => layAsWalked(from, track, { id: newRecordId(from), ...recordedNow() }, measure))
    store.tell('The line is led the way that was walked.')
  }
  const take = async (file: File) => {
    why.value = ''
    const jobs = placesJobs()
    const read = await jobs.ask('tracks', { file })
    jobs.dispose()
    const tracksIn = read && (read.ok ? read.value : read)
    if (!tracksIn) return
    const found = tracksIn.ok ? trackOfLine(plan, line, measured, tracksIn.value) : tracksIn
    if (!found.ok) {
      why.value = found.problems[0]!.message
      return
    }
    const problems = store.tryEdit((from) =>
      addRecord(from, {
        ...{ id: newRecordId(from), ...recordedNow() },
        ...{ line: line.id, kind: 'track', points: found.value },
      }),
    )
    why.value = problems[0]?.message ?? ''
  }
  return (
    <>
      {before && (
        <p>
          Led as it was laid: {say.length(measured.wireM)} of wire, where{' '}
          {say.length(measure(plan, before).wireM)} were planned. The way as planned stays on the map as a
          thin line.
        </p>
      )}
      {last && (
        <button
          type="button"
          onClick={() => {
            store.edit((from) => layAsPlanned(from, last.id, { id: newRecordId(from), ...recordedNow() }))
            store.tell('The line is led as it was before.')
          }}
        >
          Lead it as it was before
        </button>
      )}
      {tracks.map((track) => (
        <p key={track.id}>
          {recordWords(track, say)}.{' '}
          <button type="button" onClick={() => follow(track.id)}>
            Lead the line along it
          </button>
        </p>
      ))}
      <p>
        <button type="button" onClick={() => chooseFiles(TRACK_FILES, ([file]) => file && void take(file))}>
          Take a track from a GPX file…
        </button>
      </p>
      {why.value && <p role="alert">{why.value}</p>}
      <NumberField
        label="Wire really used"
        quantity="lengthM"
        system={store.units.value}
        value={measured.wireM}
        limit={WIRE}
        onCommit={(wireM) =>
          store.tryEdit((from) =>
            setUsedWire(from, line.id, measured, wireM, { id: newRecordId(from), ...recordedNow() }),
          )
        }
      />
      <p class="soft">The line’s slack becomes what that takes: every figure then rests on it.</p>
    </>
  )
}
