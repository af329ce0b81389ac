import { isUnfinished } from '../../budget/circuit-notes'
import type { ReportCircuit } from '../../report/report'
import type { Store } from '../../state/store'
import { checkWords } from '../../words/check-words'
import { formatTempC } from '../../words/units'
import { becauseWords } from '../../words/worst-words'
import { VerdictMark } from '../verdict-mark'

/** The verdict for today and for the worst weather: in sight however far down the card one is. */
export function Standing({ store, found }: { store: Store; found: ReportCircuit }) {
  const plan = store.plan.value
  const system = store.units.value
  if (isUnfinished(found.missing))
    return (
      <div class="standing">
        <p>
          <VerdictMark verdict={found.verdict} unfinished />
        </p>
      </div>
    )
  return (
    <div class="standing">
      <p>
        <VerdictMark verdict={found.verdict} /> today: {plan.weather}, wire at{' '}
        {formatTempC(plan.wireTempC, system)}.
      </p>
      <WorstLine store={store} found={found} />
    </div>
  )
}

/** `fails wet, at 50 °C, with the battery spent: the current at Sheepfold`; until that is known the corner and what has least to spare in it. */
function WorstLine({ store, found: { id, worst } }: { store: Store; found: ReportCircuit }) {
  const say = store.tongue.value
  const because = store.worstBecause.value.get(id)
  if (because?.verdict === worst.verdict)
    return (
      <p>
        <VerdictMark verdict={worst.verdict} /> {becauseWords(because, worst, say)}.
      </p>
    )
  return (
    <p>
      <VerdictMark verdict={worst.verdict} /> in the worst weather: {worst.weather}, wire at{' '}
      {say.temp(worst.wireTempC)}, supply and bells weak.
      {worst.check && ` Least to spare: ${checkWords(worst.check, say.name)}.`}
    </p>
  )
}
