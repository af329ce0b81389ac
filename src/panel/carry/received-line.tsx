import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { planFingerprint } from '../../files/plan-fingerprint'
import { isolated } from '../../isolated'
import { type Line, lineName, type Plan } from '../../plan/plan'
import { requestPlace } from '../../state/requests'
import type { Store } from '../../state/store'
import type { Keeper } from '../../storage/keeper'
import { formatCount } from '../../words/units'
import { CarryDialog } from './carry-dialog'

interface Props {
  readonly store: Store
  readonly keeper: Keeper | null
  /** The line that came in, first, and its neighbours. */
  readonly part: Plan
  /** Fingerprint of the plan that it is a part of. */
  readonly partOf: string
}

/** A plan that is at hand and has the line. */
interface Home {
  /** Empty for the plan on the table. */
  readonly key: string
  readonly plan: Plan
}

/** So many of the plans that are kept are looked through for the line, the last first. */
const MOST_LOOKED_AT = 30

/** A line that came in from a paper: shown in the plan that it belongs to where that is at hand, else opened with its neighbours. */
export function ReceivedLine({ store, keeper, part, partOf }: Props) {
  const [line] = part.lines.values()
  const home = useSignal<Home | null | undefined>(undefined)
  useEffect(() => {
    void homeOf(line!, store.settled.peek(), keeper).then((found) => {
      home.value = found
    })
  }, [line, keeper])
  const close = () => {
    store.received.value = null
  }
  const goTo = async ({ key, plan }: Home) => {
    close()
    if (key) await keeper!.open(key)
    show(store, plan, line!)
  }
  const openPart = () => {
    close()
    store.open(part)
    show(store, part, line!)
  }
  if (!line) return null
  const others = part.lines.size - 1
  return (
    <CarryDialog title="A line has come in" onClose={close}>
      <p>
        {lineName(part, line)} of “<bdi>{part.title || 'a plan without a title'}</bdi>”
        {others > 0 ? `, with ${formatCount(others, 'line')} that ${others === 1 ? 'meets' : 'meet'} it` : ''}
        .
      </p>
      {home.value !== undefined && (
        <>
          <p>{homeSentence(home.value, partOf)}</p>
          <div class="acts">
            {home.value && (
              <button type="button" onClick={() => void goTo(home.value!)}>
                {home.value.key ? 'Open that plan at the line' : 'Go to the line'}
              </button>
            )}
            <button type="button" onClick={openPart}>
              Open it as a plan of its own
            </button>
            <button type="button" onClick={close}>
              Leave it
            </button>
          </div>
          <p class="soft">
            As a plan of its own it is a part of a net: whether its circuits work hangs on the rest, and
            stands on the paper. The plan on the table stays among those that are kept in this browser.
          </p>
        </>
      )}
    </CarryDialog>
  )
}

/** The plan on the table where the line is in it, else a kept one, else none. */
async function homeOf(line: Line, mine: Plan, keeper: Keeper | null): Promise<Home | null> {
  const hasIt = ({ lines }: Plan) => {
    const own = lines.get(line.id)
    return own?.from === line.from && own.to === line.to
  }
  if (hasIt(mine)) return { key: '', plan: mine }
  const kept = ((await keeper?.list()) ?? []).filter(({ isRemoved, fault }) => !isRemoved && !fault)
  for (const { key } of kept.slice(0, MOST_LOOKED_AT)) {
    const plan = await keeper!.planOf(key)
    if (plan && hasIt(plan)) return { key, plan }
  }
  return null
}

function homeSentence(home: Home | null, partOf: string): string {
  if (!home) return 'The plan that it is a part of is not in this browser.'
  const where = home.key
    ? `It is a line of ${isolated(home.plan.title)}, which is kept in this browser`
    : 'It is a line of the plan on the table'
  return planFingerprint(home.plan) === partOf
    ? `${where}, and the paper is of that very state.`
    : `${where}. Paper and plan are not of one state: one of the two was changed since.`
}

/** Selects the line, with its middle in sight. */
function show(store: Store, plan: Plan, { id }: Line) {
  const line = plan.lines.get(id)!
  store.selection.value = { kind: 'line', id, legs: [] }
  const [from, to] = [line.from, line.to].map((end) => plan.stations.get(end)!.position)
  requestPlace(
    line.bends[Math.floor(line.bends.length / 2)] ?? [(from![0] + to![0]) / 2, (from![1] + to![1]) / 2],
  )
}
