import type { Line } from '../../plan/plan'
import type { ReportLine } from '../../report/report'
import type { Store } from '../../state/store'
import { doneSentence } from '../../words/done-words'
import { learnedSentences } from '../../words/learned-words'
import { OnDemand, Question } from '../question'
import { AsLaid } from './as-laid'
import { RecordList } from './record-list'
import './record.css'

interface Props {
  readonly store: Store
  readonly line: Line
  readonly measured: ReportLine
}

/** What was laid, read and seen of a line, and how it really lies. */
export function LineRecord({ store, line, measured }: Props) {
  const say = store.tongue.value
  const done = doneSentence(measured.field, measured.wireM, say)
  return (
    <Question ask="What was laid and read?">
      <p>{done || 'Nothing is recorded as laid yet.'}</p>
      {learnedSentences(measured.field.learned, say).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <RecordList store={store} line={line} />
      <OnDemand title="The way that it really lies">
        <AsLaid store={store} line={line} measured={measured} />
      </OnDemand>
    </Question>
  )
}
