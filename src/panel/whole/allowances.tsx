import { LAYS } from '../../plan/lays'
import { LIMITS, SLACK_LIMITS } from '../../plan/limits'
import type { Lay } from '../../plan/plan'
import { type AllowanceField, setAllowance } from '../../plan/settings-edits'
import type { Store } from '../../state/store'
import type { Quantity } from '../../words/units'
import { NumberField } from '../number-field'
import { OnDemand, Question } from '../question'

const SLACK_LABELS: Readonly<Record<Lay, string>> = {
  surface: 'Slack on the surface',
  overhead: 'Slack overhead',
  buried: 'Slack buried',
  water: 'Slack under water',
}

/** What is added to the length on the ground: each is a guess that the person can change. */
export function Allowances({ store }: { store: Store }) {
  const { allowances } = store.plan.value
  const field = (label: string, name: AllowanceField, value: number, quantity: Quantity = 'pct') => (
    <NumberField
      key={name}
      label={label}
      quantity={quantity}
      system={store.units.value}
      value={value}
      limit={limitOf(name)}
      onCommit={(given) => store.tryEdit((before) => setAllowance(before, name, given))}
    />
  )
  return (
    <Question ask="What do we allow for?">
      <p>
        Slack of {allowances.slackPct.surface} % on the surface, {allowances.reservePct} % in reserve. These
        are allowances: change them to what your crew finds.
      </p>
      <OnDemand title="All allowances">
        {LAYS.map((lay) => field(SLACK_LABELS[lay], `slackPct.${lay}`, allowances.slackPct[lay]))}
        {field('Sag of a span', 'sagPct', allowances.sagPct)}
        {field('Tail at each end of a line', 'tailM', allowances.tailM, 'lengthM')}
        {field('Wire in one splice', 'spliceWasteM', allowances.spliceWasteM, 'lengthM')}
        {field('Reserve carried', 'reservePct', allowances.reservePct)}
        {field('Resistance of a splice, each wire', 'spliceOhms', allowances.spliceOhms ?? 0, 'ohm')}
        {field('Leakage of a wet splice', 'spliceMicroS', allowances.spliceMicroS ?? 0, 'microS')}
      </OnDemand>
    </Question>
  )
}

function limitOf(name: AllowanceField) {
  const lay = LAYS.find((each) => name === `slackPct.${each}`)
  return lay ? SLACK_LIMITS[lay] : LIMITS[name as Exclude<AllowanceField, `slackPct.${Lay}`>]
}
