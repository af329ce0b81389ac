import { setWork } from '../../plan/settings-edits'
import { type WorkField as Name, WORK, type WorkUnit, workOf } from '../../plan/work'
import type { Store } from '../../state/store'
import type { Quantity } from '../../words/units'
import { WORK_SAYS, workSource } from '../../words/work-field-words'
import { NumberField } from '../number-field'

const QUANTITIES: Readonly<Record<WorkUnit, Quantity>> = {
  '': 'count',
  min: 'minute',
  kg: 'massKg',
  'km/h': 'kmPerHour',
  m: 'lengthM',
  '%': 'pct',
  times: 'times',
}

interface Props {
  readonly store: Store
  readonly field: Name
  /** Says below the field what the figure means and where it comes from. */
  readonly sourced?: boolean
}

/** `The rate overhead` as a label: `Rate overhead`. */
const labelOf = (what: string): string => what.charAt(4).toUpperCase() + what.slice(5)

/** One figure of the work, that a person can change. Emptied, it goes back to the usual one. */
export function WorkField({ store, field, sourced }: Props) {
  const figure = WORK[field]
  const put = (value: number) => store.tryEdit((before) => setWork(before, field, value))
  return (
    <>
      <NumberField
        label={labelOf(figure.what)}
        quantity={QUANTITIES[figure.unit]}
        system={store.units.value}
        value={workOf(store.plan.value, field)}
        limit={figure}
        onCommit={put}
        onClear={() => void put(figure.usual)}
      />
      {sourced && (
        <p class="soft source">
          {WORK_SAYS[field]} {workSource(field, store.tongue.value)}
        </p>
      )}
    </>
  )
}
