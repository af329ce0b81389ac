import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import type { Store } from '../../state/store'
import { isKeptForGood } from '../../storage/keep-for-good'
import type { Keeper } from '../../storage/keeper'
import type { DraftEntry } from '../../storage/kept-records'
import { download } from '../../storage/open-save'
import type { VersionEntry } from '../../storage/versions'
import { formatCount } from '../../words/units'
import { OnDemand } from '../question'
import { KeptVersions } from './kept-versions'
import { closeMenuOf } from './menu'
import { whenKept } from './when-kept'

/** What the browser keeps, as the list shows it. */
interface Kept {
  /** Null where the browser gives no store. */
  readonly plans: readonly DraftEntry[] | null
  readonly versions: readonly VersionEntry[]
  readonly isForGood: boolean
}

/** The plans kept in this browser, those removed of late, and the versions of the one on the table. */
export function KeptPlans({ store, keeper }: { store: Store; keeper: Keeper }) {
  const kept = useSignal<Kept | null>(null)
  const look = async () => {
    await keeper.flush()
    const [plans, versions, isForGood] = await Promise.all([
      keeper.list(),
      keeper.versions(),
      isKeptForGood(),
    ])
    kept.value = { plans, versions, isForGood }
  }
  useEffect(() => void look(), [])
  if (!kept.value) return null
  const { plans, versions, isForGood } = kept.value
  const act = (work: Promise<void>) => void work.then(look)
  const there = plans?.filter(({ isRemoved }) => !isRemoved) ?? []
  const removed = plans?.filter(({ isRemoved }) => isRemoved) ?? []

  return (
    <>
      <h2>Kept in this browser</h2>
      <p class="soft">{store.notKept.value || sentenceOf(plans, isForGood)}</p>
      <ul class="rows">
        {there.map((draft) => (
          <PlanRow key={draft.key} draft={draft} keeper={keeper} act={act} />
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
      {plans && <KeptVersions keeper={keeper} versions={versions} act={act} />}
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
  /** Does something with a record, and looks at the list anew. */
  readonly act: (work: Promise<void>) => void
}

const titleOf = ({ title }: DraftEntry): string => title || 'Without a title'

function PlanRow({ draft, keeper, act }: RowProps) {
  /** A row that was just removed stays in its place for as long as the menu is open, to be brought back there. */
  const isGone = useSignal(false)
  const words = `${titleOf(draft)}, ${whenKept(draft.savedAt)}`
  if (isGone.value)
    return (
      <li>
        <button
          type="button"
          class="quiet"
          onClick={() => {
            isGone.value = false
            void keeper.bringBack(draft.key)
          }}
        >
          Undo: keep {titleOf(draft)}
        </button>
        <span class="soft">removed</span>
      </li>
    )
  return (
    <li>
      {draft.fault ? (
        <button type="button" class="quiet" onClick={() => void saveText(draft, keeper)}>
          Save the text of {titleOf(draft)}
          <span class="soft">cannot be read as a plan, {whenKept(draft.savedAt)}</span>
        </button>
      ) : (
        <button
          type="button"
          class="quiet"
          onClick={(event) => {
            closeMenuOf(event.currentTarget)
            act(keeper.open(draft.key))
          }}
        >
          {titleOf(draft)}
          <span class="soft"> {whenKept(draft.savedAt)}</span>
        </button>
      )}
      <button
        type="button"
        aria-label={`Remove ${words}`}
        onClick={() => {
          isGone.value = true
          void keeper.remove(draft.key)
        }}
      >
        Remove
      </button>
    </li>
  )
}

const saveText = async (draft: DraftEntry, keeper: Keeper) =>
  download(`${draft.title || 'kept plan'}.txt`, await keeper.textOf(draft.key), 'text/plain')

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
