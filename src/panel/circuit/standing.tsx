import { isUnfinished } from '../../budget/circuit-notes'
import { stationName } from '../../plan/plan'
import type { ReportCircuit } from '../../report/report'
import type { Store } from '../../state/store'
import { checkWords } from '../../words/check-words'
import { formatTempC } from '../../words/units'
import { VerdictMark } from '../verdict-mark'

/** The verdict for today and for the worst weather: in sight however far down the card one is. */
export function Standing({ store, found }: { store: Store; found: ReportCircuit }) {
  const plan = store.plan.value
  const system = store.units.value
  const { worst } = found
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
      <p>
        <VerdictMark verdict={worst.verdict} /> in the worst weather: {worst.weather}, wire at{' '}
        {formatTempC(worst.wireTempC, system)}.
        {worst.check && ` Least to spare: ${checkWords(worst.check, (id) => stationName(plan, id))}.`}
      </p>
    </div>
  )
}
