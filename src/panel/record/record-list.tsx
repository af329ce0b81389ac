import { pointAtWireM } from '../../measure/place-on-line'
import { undoRecord } from '../../plan/add-record'
import type { Line } from '../../plan/plan'
import { type StandingRecord, standingRecords } from '../../plan/standing-records'
import { newRecordId } from '../../state/new-record-id'
import { requestPlace } from '../../state/requests'
import type { Store } from '../../state/store'
import { recordedNow } from '../../state/who-records'
import { recordWords } from '../../words/record-words'
import { formatCount } from '../../words/units'
import { OnDemand } from '../question'

/** Everything that was recorded of a line and counts, the last first, with pictures. */
export function RecordList({ store, line }: { store: Store; line: Line }) {
  const records = standingRecords(store.plan.value).filter((record) => record.line === line.id)
  if (records.length === 0) return null
  return (
    <OnDemand title={formatCount(records.length, 'record')}>
      <ol class="records">
        {records.toReversed().map((record) => (
          <li key={record.id}>
            <RecordRow store={store} line={line} record={record} />
          </li>
        ))}
      </ol>
    </OnDemand>
  )
}

/** Where on the wire a record is about, m; undefined where it has no place. */
const wireMOf = (record: StandingRecord): number | undefined =>
  'toM' in record ? record.toM : 'wireM' in record ? record.wireM : undefined

function RecordRow({ store, line, record }: { store: Store; line: Line; record: StandingRecord }) {
  const wireM = wireMOf(record)
  const show = () => {
    const measured = store.report.value.lines.find(({ id }) => id === line.id)
    if (measured && wireM !== undefined)
      requestPlace(pointAtWireM(store.plan.value, measured, line, wireM).position)
  }
  // The way back from how it was laid stands with the way itself.
  const canUndo = record.kind !== 'as-laid'
  return (
    <>
      <p>
        {recordWords(record, store.tongue.value)}.
        <span class="soft"> {[whenWords(record.at), record.by].filter(Boolean).join(', ')}</span>
      </p>
      {'photo' in record && record.photo && (
        <img src={record.photo} alt={`Seen there: ${recordWords(record, store.tongue.value)}`} />
      )}
      <div class="choice">
        {wireM !== undefined && (
          <button type="button" class="quiet" onClick={show}>
            Show it
          </button>
        )}
        {canUndo && (
          <button
            type="button"
            class="quiet"
            onClick={() => {
              store.edit((plan) => undoRecord(plan, record.id, { id: newRecordId(plan), ...recordedNow() }))
              store.tell('The record no longer counts.')
            }}
          >
            It was a slip
          </button>
        )}
      </div>
    </>
  )
}

/** `25 Nov, 10:12`, in the clock of whoever looks. */
const whenWords = (at: string | undefined): string =>
  at === undefined ? '' : new Date(at).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' })
