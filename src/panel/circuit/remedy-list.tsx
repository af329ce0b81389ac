import type { Circuit } from '../../plan/plan'
import type { Remedy } from '../../report/report'
import type { Store } from '../../state/store'
import { remedyWords } from '../../words/remedy-words'
import type { Tongue } from '../../words/tongue'
import { formatCount } from '../../words/units'
import { OnDemand } from '../question'
import { VerdictMark } from '../verdict-mark'

interface Props {
  readonly remedies: readonly Remedy[]
  readonly store: Store
  readonly circuit: Circuit
  readonly onApply: (remedy: Remedy) => void
}

/** How many are shown at once; the rest on demand. */
const FIRST = 3

/** What would mend a circuit: the engine has tried each, and one click applies it. The best come first. */
export function RemedyList(props: Props) {
  const rest = props.remedies.slice(FIRST)
  return (
    <>
      <Remedies {...props} remedies={props.remedies.slice(0, FIRST)} />
      {rest.length > 0 && (
        <OnDemand title={formatCount(rest.length, 'more remedy', 'more remedies')}>
          <Remedies {...props} remedies={rest} />
        </OnDemand>
      )}
    </>
  )
}

function Remedies({ remedies, store, circuit, onApply }: Props) {
  const say = store.tongue.value
  const each = remedies.map((remedy) => ({
    remedy,
    what: remedyWords(remedy.changes, store.settled.value, circuit, say),
  }))
  return (
    <ul class="remedies">
      {each.map(({ remedy, what }) => (
        <li key={what}>
          <span>
            {what} <span class="soft">({costText(remedy, say)})</span>
            <span class="gives">
              <VerdictMark verdict={remedy.verdict} /> today, {spareText(remedy.marginPct)}
            </span>
            <span class="gives">
              <VerdictMark verdict={remedy.worst} /> at worst, {spareText(remedy.worstMarginPct)}
            </span>
          </span>
          <button type="button" aria-label={`Apply: ${what}`} onClick={() => onApply(remedy)}>
            Apply
          </button>
        </li>
      ))}
    </ul>
  )
}

/** How much the tightest check would have to spare. */
const spareText = (marginPct: number): string =>
  marginPct < 0
    ? `${Math.abs(Math.round(marginPct))} % short`
    : marginPct >= 100
      ? `${(1 + marginPct / 100).toFixed(1)} times what it needs`
      : `${Math.round(marginPct)} % more than it needs`

function costText({ extraM, extraKg, extraSpools }: Remedy, { run, mass }: Tongue): string {
  const more = (value: number, text: string) => `${value < 0 ? '−' : '+'}${text}`
  const parts = [
    ...(Math.abs(extraM) >= 0.5 ? [more(extraM, run(Math.abs(extraM)))] : []),
    ...(Math.abs(extraKg) >= 0.05 ? [more(extraKg, mass(Math.abs(extraKg)))] : []),
    ...(extraSpools !== 0 ? [more(extraSpools, formatCount(Math.abs(extraSpools), 'spool'))] : []),
  ]
  return parts.length > 0 ? parts.join(', ') : 'no more wire'
}
