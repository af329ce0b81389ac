import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { addRecord, undoRecord } from '../plan/add-record'
import type { FieldRecord } from '../plan/plan'
import { newRecordId } from '../state/new-record-id'
import type { Store } from '../state/store'
import { recordedNow } from '../state/who-records'
import { RECORD_NAMES } from '../words/record-words'
import { HoldButton } from './hold-button'
import { type Remark, RemarkForm } from './remark-form'
import type { SpoolInHand } from './spool-in-hand'
import { stretchTo } from './stretch-to'
import type { WalkLine } from './walk-line'

interface Props {
  readonly store: Store
  readonly walked: WalkLine
  /** Wire from the line's `from` to where one stands, m. */
  readonly wireM: number
  readonly spool: SpoolInHand
}

type Kind = 'laid' | 'tested' | 'recovered'

/** Untouched for so long, the buttons lock again, ms. */
const LOCK_MS = 60_000

/** What is done where one stands, behind a lock that a slip does not open. */
export function Deeds({ store, walked, wireM, spool }: Props) {
  const { line, measured, records, tongue, toward } = walked
  const { say } = tongue
  const isOpen = useSignal(false)
  const said = useSignal('')
  const remark = useSignal<Remark | null>(null)
  useEffect(() => {
    if (!isOpen.value || remark.value) return undefined
    const timer = setTimeout(() => {
      isOpen.value = false
    }, LOCK_MS)
    return () => clearTimeout(timer)
  }, [isOpen.value, remark.value, said.value])

  const keep = (make: (id: string) => FieldRecord, words: string): boolean => {
    const problems = store.tryEdit((plan) => addRecord(plan, make(newRecordId(plan))))
    said.value = problems[0]?.message ?? words
    return problems.length === 0
  }
  const done = (kind: Kind, from = kind === 'laid' ? spool.chosen : '') => {
    const stretch = stretchTo(measured.field.done[kind], wireM, toward, measured.wireM)
    const name = RECORD_NAMES[kind]
    if (!stretch) {
      said.value = `${name} up to here before.`
      return false
    }
    const words = `${name}: ${say.length(stretch.fromM)} to ${say.length(stretch.toM)} of wire.`
    const made = { ...recordedNow(), line: line.id, kind, ...stretch, ...(from && { spool: from }) }
    return keep((id) => ({ id, ...made }), words)
  }
  const last = records.findLast(({ kind }) => kind !== 'track' && kind !== 'as-laid')
  const undo = () => {
    if (!last) return
    store.edit((plan) => undoRecord(plan, last.id, { id: newRecordId(plan), ...recordedNow() }))
    said.value = store.locked.peek()
      ? 'The plan is locked.'
      : `Undone: ${RECORD_NAMES[last.kind].toLowerCase()}.`
  }

  return (
    <footer class="deeds">
      {said.value && <p role="status">{said.value}</p>}
      {remark.value ? (
        <RemarkForm
          kind={remark.value}
          onKeep={(text, photo) => {
            const kind = remark.value!
            const made = { ...recordedNow(), line: line.id, kind, wireM, text, ...(photo && { photo }) }
            const words = `${RECORD_NAMES[kind]} at ${say.length(wireM)} of wire is kept.`
            if (keep((id) => ({ id, ...made }), words)) remark.value = null
          }}
          onLeave={() => {
            remark.value = null
          }}
        />
      ) : isOpen.value ? (
        <>
          <button type="button" class="main" onClick={() => done('laid')}>
            Laid to here · {say.length(wireM)}
          </button>
          <div class="row">
            {(['tested', 'recovered'] as const).map((kind) => (
              <button key={kind} type="button" onClick={() => done(kind)}>
                {RECORD_NAMES[kind]}
              </button>
            ))}
            <button
              type="button"
              onClick={() => {
                if (done('laid', spool.chosen || spool.planned)) spool.next()
              }}
            >
              Spool ends
            </button>
            <button type="button" disabled={!last} onClick={undo}>
              Undo
            </button>
          </div>
          <div class="row">
            {(['fault', 'mended', 'note'] as const).map((kind) => (
              <button
                key={kind}
                type="button"
                onClick={() => {
                  remark.value = kind
                }}
              >
                {RECORD_NAMES[kind]}
              </button>
            ))}
          </div>
        </>
      ) : (
        <HoldButton
          words="Hold to unlock"
          onHeld={() => {
            said.value = ''
            isOpen.value = true
          }}
        />
      )}
    </footer>
  )
}
