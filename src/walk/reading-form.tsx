import { useSignal } from '@preact/signals'
import { useEffect, useMemo, useRef } from 'preact/hooks'
import type { Far, What } from '../field/probe'
import { SelectField } from '../panel/select-field'
import { addRecord } from '../plan/add-record'
import { learnedOf } from '../report/learned-of'
import type { Toward } from '../report/walk-marks'
import { newRecordId } from '../state/new-record-id'
import type { Store } from '../state/store'
import { recordedNow } from '../state/who-records'
import { odditySentence, readingWords } from '../words/field-words'
import type { Errand } from './fault-ahead'
import type { WalkLine } from './walk-line'

interface Way {
  readonly what: What
  readonly far: Far
  readonly text: string
  readonly unit: string
}

/** What can be read at a tag, with the far end as it has to be. */
const WAYS = {
  loop: { what: 'loopOhms', far: 'short', text: 'Loop, far end joined', unit: 'Ω' },
  across: { what: 'loopOhms', far: 'open', text: 'Ohms, far end open', unit: 'Ω' },
  farad: { what: 'nanoF', far: 'open', text: 'Capacitance, far end open', unit: 'nF' },
  insulation: { what: 'kOhms', far: 'open', text: 'Insulation, far end open', unit: 'kΩ' },
  ring: { what: 'ringVolts', far: 'set', text: 'Bell volts, far end rings', unit: 'V' },
  current: { what: 'mA', far: 'set', text: 'Current of the supply', unit: 'mA' },
  loss: { what: 'lossDb', far: 'set', text: 'Loss of speech', unit: 'dB' },
} as const satisfies Readonly<Record<string, Way>>

const OPTIONS = Object.entries(WAYS).map(([value, { text }]) => ({ value: value as keyof typeof WAYS, text }))

/** How what is to be read is read; the loop where nobody says. */
function wayOf(take: Errand['take']): keyof typeof WAYS {
  const same = (way: Way) => way.what === take?.what && way.far === take.far
  return (Object.keys(WAYS) as (keyof typeof WAYS)[]).find((name) => same(WAYS[name])) ?? 'loop'
}

/** An end of the line, named as such or by its station. */
const endOf = (toward: string, { line }: WalkLine): Toward =>
  toward === 'to' || toward === line.to ? 'to' : 'from'

/** Whoever lays wire looks back along what lies; at its first tag there is nothing behind. */
function usualEnd(tag: number, { tags, toward }: WalkLine): Toward {
  if (tag === 1) return 'to'
  if (tag === tags.length) return 'from'
  return toward === 'to' ? 'from' : 'to'
}

interface Props {
  readonly store: Store
  readonly walked: WalkLine
  readonly tag: WalkLine['tags'][number]
  /** What is to be read there, where a fault is sought. */
  readonly take: Errand['take']
}

/** At a tag: what a meter should show, what it does show, and what that means. */
export function ReadingForm({ store, walked, tag, take }: Props) {
  const { plan, line, lengths, measured, tongue } = walked
  const { say, lineNumber } = tongue
  const way = useSignal<keyof typeof WAYS>(wayOf(take))
  const toward = useSignal<Toward>(take ? endOf(take.toward, walked) : usualEnd(tag.number, walked))
  const typed = useSignal('')
  const said = useSignal('')
  const { what, far, unit } = WAYS[way.value]
  const wireM = Math.min(tag.wireM, measured.wireM)
  const question = { line: line.id, wireM, toward: toward.value, what, far }
  const learned = useMemo(() => learnedOf(plan, lengths), [plan, lengths])
  const expected = learned.expect(question)

  // On a small screen the answer would come below the edge.
  const answer = useRef<HTMLParagraphElement>(null)
  useEffect(() => {
    if (said.value) answer.current?.scrollIntoView({ block: 'end' })
  }, [said.value])

  const enter = () => {
    const value = Number(typed.value.trim().replace('−', '-').replace(',', '.'))
    if (typed.value.trim() === '' || !Number.isFinite(value)) {
      said.value = 'Give the number that the meter shows.'
      return
    }
    let record = ''
    const problems = store.tryEdit((before) => {
      record = newRecordId(before)
      return addRecord(before, { id: record, ...recordedNow(), kind: 'reading', ...question, value })
    })
    if (problems.length > 0) {
      said.value = problems[0]!.message
      return
    }
    typed.value = ''
    const odd = learnedOf(store.settled.peek(), lengths).odd.find((each) => each.record === record)
    const read = readingWords(what, value)
    said.value = odd ? `${read}. ${odditySentence(odd, say)}` : `${read}: as expected.`
  }

  return (
    <form
      class="reading"
      onSubmit={(event) => {
        event.preventDefault()
        enter()
      }}
    >
      <h2>
        Read at tag {lineNumber}/{tag.number}
      </h2>
      <SelectField
        label="What"
        value={way.value}
        options={OPTIONS}
        onCommit={(chosen) => {
          way.value = chosen
          said.value = ''
        }}
      />
      <SelectField
        label="Looks to"
        value={toward.value}
        options={[
          { value: 'from', text: say.name(line.from) },
          { value: 'to', text: say.name(line.to) },
        ]}
        onCommit={(chosen) => {
          toward.value = chosen
          said.value = ''
        }}
      />
      <p>
        {expected
          ? `Should read ${readingWords(what, expected.value)}: ${readingWords(what, expected.low)} to ${readingWords(what, expected.high)}.`
          : 'Nothing at that end gives such a reading.'}
      </p>
      <div class="row">
        <label>
          Read, {unit}
          <input
            type="text"
            inputMode="decimal"
            autocomplete="off"
            value={typed.value}
            onInput={({ currentTarget }) => {
              typed.value = currentTarget.value
            }}
          />
        </label>
        <button type="submit">Enter</button>
      </div>
      <p ref={answer} role="status" class="found">
        {said.value}
      </p>
    </form>
  )
}
