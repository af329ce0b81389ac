import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import type { Stretch } from '../field/stretches'
import { addRecord, undoRecord } from '../plan/add-record'
import type { FieldRecord } from '../plan/plan'
import { newRecordId } from '../state/new-record-id'
import type { Store } from '../state/store'
import { recordedNow } from '../state/who-records'
import { HoldButton } from './hold-button'
import type { WalkLine } from './walk-line'

interface Props {
  readonly store: Store
  readonly walked: WalkLine
  /** Wire from the line's `from` to where one stands, m. */
  readonly wireM: number
}

type Kind = 'laid' | 'tested' | 'recovered'
type Remark = 'fault' | 'mended' | 'note'

const DONE: Readonly<Record<Kind, string>> = { laid: 'Laid', tested: 'Tested', recovered: 'Taken up' }
const REMARK: Readonly<Record<Remark, string>> = { fault: 'Fault', mended: 'Mended', note: 'Note' }

/** Untouched for so long, the buttons lock again, ms. */
const LOCK_MS = 60_000

/** What is done where one stands, behind a lock that a slip does not open. */
export function Deeds({ store, walked, wireM }: Props) {
  const { line, measured, records, tongue } = walked
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
  const done = (kind: Kind) => {
    const stretch = stretchTo(measured.field.done[kind], wireM)
    if (!stretch) {
      said.value = `${DONE[kind]} up to here before.`
      return
    }
    const words = `${DONE[kind]}: ${say.length(stretch.fromM)} to ${say.length(stretch.toM)} of wire.`
    keep((id) => ({ id, ...recordedNow(), line: line.id, kind, ...stretch }), words)
  }
  const last = records.at(-1)
  const undo = () => {
    if (!last) return
    store.edit((plan) => undoRecord(plan, last.id, { id: newRecordId(plan), ...recordedNow() }))
    said.value = store.locked.peek() ? 'The plan is locked.' : `Undone: ${recordWords(last.kind)}.`
  }

  return (
    <footer class="deeds">
      {said.value && <p role="status">{said.value}</p>}
      {remark.value ? (
        <RemarkForm
          kind={remark.value}
          onKeep={(text) => {
            const kind = remark.value!
            if (
              keep(
                (id) => ({ id, ...recordedNow(), line: line.id, kind, wireM, text }),
                `${REMARK[kind]} at ${say.length(wireM)} of wire is kept.`,
              )
            )
              remark.value = null
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
                {DONE[kind]}
              </button>
            ))}
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
                {REMARK[kind]}
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

function RemarkForm({
  kind,
  onKeep,
  onLeave,
}: {
  kind: Remark
  onKeep: (text: string) => void
  onLeave: () => void
}) {
  const text = useSignal('')
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault()
        onKeep(text.value.trim())
      }}
    >
      <label>
        {REMARK[kind]}: what is it?
        <input
          value={text.value}
          onInput={({ currentTarget }) => {
            text.value = currentTarget.value
          }}
        />
      </label>
      <div class="row">
        <button type="submit" class="main">
          Keep
        </button>
        <button type="button" onClick={onLeave}>
          Leave
        </button>
      </div>
    </form>
  )
}

/** What a stretch that ends here adds to those before; null where it adds nothing. */
function stretchTo(before: readonly Stretch[], wireM: number): Stretch | null {
  const fromM = before.findLast((each) => each.fromM <= wireM)?.toM ?? 0
  return fromM < wireM ? { fromM, toM: wireM } : null
}

const recordWords = (kind: FieldRecord['kind']): string =>
  (({ ...DONE, ...REMARK, reading: 'the reading', track: 'the track' }) as Record<string, string>)[
    kind
  ]?.toLowerCase() ?? kind
