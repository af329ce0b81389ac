import type { FaultFinding } from '../state/findings'
import { kindSentence, nextSentence, placeSentence } from '../words/found-words'
import type { WalkLine } from './walk-line'

type Step = FaultFinding['found']['next'][number]

/** Where to go, and what to read there. */
export interface Errand {
  readonly wireM: number
  readonly take: Step['take']
}

interface Props {
  readonly walked: WalkLine
  readonly finding: FaultFinding
  readonly onGo: (errand: Errand) => void
}

/** Where the fault that is sought lies on this line, and the next measurement on it as a button that leads there. */
export function FaultAhead({ walked: { plan, line, measured, tongue }, finding, onGo }: Props) {
  const { found, measured: lengths } = finding
  const { say } = tongue
  const place = found.places.find((each) => each.line === line.id)
  const steps = found.next.flatMap((step) => {
    const wireM = wireMOf(step.at, line, measured.wireM)
    return wireM === undefined ? [] : [{ step, wireM }]
  })
  const [first] = steps
  return (
    <section class="sought">
      <p>
        <strong>{kindSentence(found)}</strong>{' '}
        {place ? placeSentence(plan, lengths, place, say) : 'It is hardly on this line.'}
      </p>
      {first ? (
        <button type="button" onClick={() => onGo({ wireM: first.wireM, take: first.step.take })}>
          Next: {nextSentence(plan, lengths, first.step, say)}
        </button>
      ) : (
        found.next[0] && <p>Next, on another line: {nextSentence(plan, lengths, found.next[0], say)}</p>
      )}
    </section>
  )
}

/** Where on a line a step is, m of wire from its `from`; undefined where it is on another. */
function wireMOf(at: Step['at'], line: WalkLine['line'], wireM: number): number | undefined {
  if (typeof at !== 'string') return at.line === line.id ? at.wireM : undefined
  return at === line.from ? 0 : at === line.to ? wireM : undefined
}
