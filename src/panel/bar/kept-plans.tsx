import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import type { Store } from '../../state/store'
import { isKeptForGood } from '../../storage/keep-for-good'
import type { Keeper } from '../../storage/keeper'
import type { DraftEntry, VersionEntry } from '../../storage/kept-records'
import { formatCount } from '../../words/units'
import { OnDemand } from '../question'
import { KeptVersions } from './kept-versions'
import { KeptPlanCard, OpenPlanCard, titleOf } from './plan-cards'
import { whenKept } from './when-kept'

/** What the browser keeps, as the list shows it. */
interface Kept {
  /** Null where the browser gives no store. */
  readonly plans: readonly DraftEntry[] | null
  readonly openKey: string | null
  readonly versions: readonly VersionEntry[]
  readonly isForGood: boolean
}

/** The plan on the table with its versions, the other plans kept in this browser, and those removed of late. */
export function KeptPlans({ store, keeper }: { store: Store; keeper: Keeper }) {
  const kept = useSignal<Kept | null>(null)
  const look = async () => {
    await keeper.flush()
    const [plans, versions, isForGood] = await Promise.all([
      keeper.list(),
      keeper.versions(),
      isKeptForGood(),
    ])
    kept.value = { plans, versions, isForGood, openKey: keeper.openKey() }
  }
  useEffect(() => void look(), [])
  if (!kept.value) return null
  const { plans, versions, isForGood, openKey } = kept.value
  const act = (work: Promise<unknown>) => void work.then(look)
  const open = plans?.find(({ key }) => key === openKey)
  const there = plans?.filter(({ isRemoved, key }) => !isRemoved && key !== openKey) ?? []
  const removed = plans?.filter(({ isRemoved }) => isRemoved) ?? []

  return (
    <>
      <ul class="plan-cards">
        <OpenPlanCard store={store} draft={open} keeper={keeper} act={act} />
      </ul>
      {plans && <KeptVersions keeper={keeper} versions={versions} act={act} />}
      <h2>Kept in this browser</h2>
      <p class="soft">{store.notKept.value || sentenceOf(plans, isForGood)}</p>
      <ul class="plan-cards">
        {there.map((draft) => (
          <KeptPlanCard key={draft.key} draft={draft} keeper={keeper} act={act} />
        ))}
      </ul>
      {removed.length > 0 && (
        <OnDemand title={`${formatCount(removed.length, 'removed plan')}, the last ones`}>
          <ul class="rows">
            {removed.map((draft) => (
              <RemovedRow key={draft.key} draft={draft} keeper={keeper} act={act} />
            ))}
          </ul>
        </OnDemand>
      )}
    </>
  )
}

function sentenceOf(plans: readonly DraftEntry[] | null, isForGood: boolean): string {
  if (!plans) return 'This browser keeps none here: save the plan as a file.'
  if (plans.every(({ isRemoved }) => isRemoved)) return 'None yet. A plan is kept as soon as you change it.'
  return isForGood
    ? 'The browser keeps them until you remove them.'
    : 'The browser may clear them when the disk runs short: keep what matters in a file as well.'
}

interface RowProps {
  readonly draft: DraftEntry
  readonly keeper: Keeper
  readonly act: (work: Promise<unknown>) => void
}

function RemovedRow({ draft, keeper, act }: RowProps) {
  /** Whether a second press takes leave of it. */
  const isDoubted = useSignal(false)
  const words = `${titleOf(draft)}, ${whenKept(draft.savedAt)}`
  return (
    <li>
      <button
        type="button"
        class="quiet"
        aria-label={`Bring back ${words}`}
        onClick={() => act(keeper.bringBack(draft.key))}
      >
        Bring back {titleOf(draft)}
        <span class="soft"> {whenKept(draft.savedAt)}</span>
      </button>
      <button
        type="button"
        class="harm"
        aria-label={`${isDoubted.value ? 'Erase for good' : 'Erase'} ${words}`}
        onClick={() => {
          if (isDoubted.value) act(keeper.erase(draft.key))
          else isDoubted.value = true
        }}
      >
        {isDoubted.value ? 'Erase for good' : 'Erase'}
      </button>
    </li>
  )
}
