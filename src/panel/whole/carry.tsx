import type { WireSpools } from '../../materials/spool-plan'
import { formatMassKg } from '../../report/quantity-text'
import type { Store } from '../../state/store'
import { formatCount, formatRunM } from '../format'
import { Question } from '../question'
import { StockTable } from './stock-table'

/** The spools to take, the splices to make, what is left over; and the stock they come from. */
export function Carry({ store }: { store: Store }) {
  const { spools } = store.report.value
  const system = store.units.value
  return (
    <Question ask="What do we carry?">
      <p>{carrySentence(spools, store)}</p>
      {spools.map((wire) => (
        <div key={wire.wire} class="load">
          <strong>{store.catalog.value.wires.get(wire.wire)?.name ?? wire.wire}</strong>
          <span>
            {wire.carry.map(({ lengthM, count }) => `${count} × ${formatRunM(lengthM, system)}`).join(', ') ||
              'no spool'}
            , {formatMassKg(wire.kg, system)}
          </span>
          <span class="soft">
            {formatRunM(wire.neededM, system)} needed with reserve, {formatCount(wire.splices, 'splice')},{' '}
            {formatRunM(wire.leftM, system)} left over on the spools used
          </span>
          {wire.missingM > 0 && (
            <span class="fails">The stock is {formatRunM(wire.missingM, system)} too short.</span>
          )}
        </div>
      ))}
      <StockTable store={store} />
    </Question>
  )
}

function carrySentence(spools: readonly WireSpools[], store: Store): string {
  const count = spools.flatMap((wire) => wire.carry).reduce((sum, carry) => sum + carry.count, 0)
  if (count === 0) return 'No wire yet.'
  const splices = spools.reduce((sum, wire) => sum + wire.splices, 0)
  const kg = spools.reduce((sum, wire) => sum + wire.kg, 0)
  return `${formatCount(count, 'spool')}, ${formatCount(splices, 'splice')}, ${formatMassKg(kg, store.units.value)} of wire.`
}
