import { useId } from 'preact/hooks'
import type { Burden, ShownNet } from '../../jobs/shelf-answers'
import { netOntoPlan } from '../../shelf/onto-plan'
import type { Store } from '../../state/store'
import { formatCount, formatLengthM, formatMassKg, type UnitSystem } from '../../words/units'
import { formatHours } from '../../words/work-words'
import { VerdictMark } from '../verdict-mark'
import { HookUp } from './hook-up'
import { NetSketch } from './net-sketch'
import type { Sought } from './sought'

/** The nets that can be made, beside each other; what is lacking where there is none; what one thing more would bring. */
export function NetCards({
  store,
  sought,
  isSeeking,
  onTaken,
}: {
  store: Store
  sought: Sought
  isSeeking: boolean
  onTaken: () => void
}) {
  const { nets, missing, more, says } = sought
  const fails = nets[0]?.verdict === 'fails'
  const take = (net: ShownNet) => {
    takeNet(store, net, sought.onMap)
    onTaken()
  }
  return (
    <>
      {!isSeeking && missing.length > 0 && (
        <section aria-label="What is lacking">
          <h2>
            {nets.length > 0
              ? 'Nothing that works; the nearest, and what is lacking'
              : 'No net: what is lacking'}
          </h2>
          <ul class="notes">
            {missing.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </section>
      )}
      {nets.length > 0 && (
        <ol class="nets" aria-label={fails ? 'The nearest misses' : 'Nets, the best first'}>
          {nets.map((net, k) => (
            <Card
              key={`${k} ${net.title}`}
              net={net}
              burden={sought.burdens.get(k)}
              system={store.units.value}
              onTake={() => take(net)}
            />
          ))}
        </ol>
      )}
      {more.length > 0 && (
        <section aria-label="One thing more">
          <h2>What would one thing more bring?</h2>
          <ul class="notes">
            {more.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </section>
      )}
      {says && <p class="soft">{says}</p>}
    </>
  )
}

function Card({
  net,
  burden,
  system,
  onTake,
}: {
  net: ShownNet
  burden: Burden | undefined
  system: UnitSystem
  onTake: () => void
}) {
  const id = useId()
  const ofHundred = (share: number) => Math.round(100 * share)
  return (
    <li class="net" aria-labelledby={id}>
      <NetSketch plan={net.plan} />
      <div>
        <h3 id={id}>{net.title}</h3>
        <p class="stands">
          <VerdictMark verdict={net.verdict} /> today <VerdictMark verdict={net.worst} /> at worst
        </p>
        <p>{net.why}</p>
        <p class="soft">
          {formatLengthM(net.wireM, system)} of wire, {formatCount(net.splices, 'splice')},{' '}
          {formatLengthM(net.leftM, system)} left on its spools
          {burden &&
            `; ${formatMassKg(burden.kg, system)} to carry, ${formatHours(burden.hours)} to lay; ${ofHundred(burden.today)} of 100 such nets work today, ${ofHundred(burden.worst)} at worst`}
          .
        </p>
        <HookUp plan={net.plan} />
        <button type="button" aria-describedby={id} onClick={onTake}>
          Make it the plan
        </button>
      </div>
    </li>
  )
}

/** A net of stations on the map becomes part of their plan, which undo takes back, unless lines lie there already; any other is a plan of its own. */
function takeNet(store: Store, net: ShownNet, onMap: boolean): void {
  const plan = store.settled.peek()
  const isBare = plan.lines.size === 0 && plan.circuits.size === 0
  if (onMap && isBare) {
    store.edit((before) => netOntoPlan(before, net.plan))
    store.tell(`${net.title}: drawn into this plan.`)
  } else {
    store.open(net.plan)
    if (plan.stations.size > 0)
      store.tell('The net is a plan of its own; the one from before is under Plans.', undefined)
  }
  const first = [...net.plan.circuits.keys()][0]
  if (first && net.plan.circuits.size === 1) store.selection.value = { kind: 'circuit', id: first }
}
