import './plan-cards.css'
import { useSignal } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import { useEffect } from 'preact/hooks'
import type { Plan } from '../../plan/plan'
import { setTitle } from '../../plan/text-edits'
import type { Store } from '../../state/store'
import type { Keeper } from '../../storage/keeper'
import type { DraftEntry } from '../../storage/kept-records'
import { download } from '../../storage/save-plan-file'
import { TextField } from '../text-field'
import { closeMenuOf } from './menu'
import { PlanSketchView } from './plan-sketch-view'
import { whenKept } from './when-kept'

interface CardProps {
  readonly title: string
  /** When it was kept, or why not. */
  readonly when: string
  readonly plan: Plan | undefined
  readonly isOpen?: boolean
  readonly onOpen?: (event: Event) => void
  readonly children: ComponentChildren
}

/** A plan as one of a row: its small map, name and date, and what can be done with it. */
function Card({ title, when, plan, isOpen, onOpen, children }: CardProps) {
  const words = (
    <>
      <PlanSketchView plan={plan} />
      <span>
        <strong>
          <bdi>{title}</bdi>
        </strong>
        <span class="soft">{when}</span>
        {isOpen && <span class="on-table">on the table</span>}
      </span>
    </>
  )
  return (
    <li class={isOpen ? 'plan-card open' : 'plan-card'} aria-current={isOpen ? 'true' : undefined}>
      {onOpen ? (
        <button type="button" class="plan-card-open" onClick={onOpen}>
          {words}
        </button>
      ) : (
        <div class="plan-card-open">{words}</div>
      )}
      <div class="plan-card-acts">{children}</div>
    </li>
  )
}

export const titleOf = ({ title }: { readonly title: string }): string => title || 'Without a title'

const copyOf = (plan: Plan): Plan => setTitle(plan, `Copy of ${titleOf(plan)}`)

/** A button that opens a field for another name. */
function Rename({ title, onName }: { title: string; onName: (title: string) => void }) {
  const isAsked = useSignal(false)
  if (!isAsked.value)
    return (
      <button
        type="button"
        aria-label={`Rename ${title}`}
        onClick={() => {
          isAsked.value = true
        }}
      >
        Rename
      </button>
    )
  return (
    <form
      class="plan-card-name"
      ref={(form) => form?.querySelector('input')?.select()}
      onSubmit={(event) => {
        event.preventDefault()
        isAsked.value = false
      }}
    >
      <TextField label="New name" value={title} needed onCommit={onName} />
      <button type="submit">Done</button>
    </form>
  )
}

/** The plan on the table, kept or not. */
export function OpenPlanCard({
  store,
  draft,
  act,
  keeper,
}: {
  readonly store: Store
  readonly draft: DraftEntry | undefined
  readonly act: (work: Promise<unknown>) => void
  readonly keeper: Keeper
}) {
  const plan = store.settled.value
  return (
    <Card
      title={titleOf(plan)}
      when={draft ? whenKept(draft.savedAt) : 'Kept as soon as you change it'}
      plan={plan}
      isOpen
    >
      <Rename title={titleOf(plan)} onName={(title) => store.edit((before) => setTitle(before, title))} />
      <button
        type="button"
        aria-label={`Duplicate ${titleOf(plan)}`}
        onClick={() => act(keeper.keepAside(copyOf(store.settled.peek())))}
      >
        Duplicate
      </button>
    </Card>
  )
}

/** A plan that is kept and not on the table: opened by a press, or renamed, copied, removed. */
export function KeptPlanCard({
  draft,
  keeper,
  act,
}: {
  readonly draft: DraftEntry
  readonly keeper: Keeper
  /** Does something with a record, and looks at the list anew. */
  readonly act: (work: Promise<unknown>) => void
}) {
  /** A card that was just removed stays in its place for as long as the menu is open, to be brought back there. */
  const isGone = useSignal(false)
  /** Null where none can be made of its record. */
  const plan = useSignal<Plan | null | undefined>(undefined)
  useEffect(() => {
    void keeper.planOf(draft.key).then((found) => {
      plan.value = found ?? null
    })
  }, [draft.key, draft.revision])
  const title = titleOf(draft)
  const words = `${title}, ${whenKept(draft.savedAt)}`
  if (isGone.value)
    return (
      <li class="plan-card gone">
        <button
          type="button"
          class="quiet"
          onClick={() => {
            isGone.value = false
            void keeper.bringBack(draft.key)
          }}
        >
          Undo: keep {title}
        </button>
        <span class="soft">removed</span>
      </li>
    )
  const remove = (
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
  )
  if (draft.fault || plan.value === null)
    return (
      <Card title={title} when={`cannot be read as a plan, ${whenKept(draft.savedAt)}`} plan={undefined}>
        <button
          type="button"
          onClick={() => void saveText(draft, keeper)}
          aria-label={`Save the text of ${title}`}
        >
          Save the text
        </button>
        {remove}
      </Card>
    )
  return (
    <Card
      title={title}
      when={whenKept(draft.savedAt)}
      plan={plan.value}
      onOpen={(event) => {
        closeMenuOf(event.currentTarget as Element)
        act(keeper.open(draft.key))
      }}
    >
      <Rename title={title} onName={(name) => act(keeper.rename(draft.key, name))} />
      <button
        type="button"
        aria-label={`Duplicate ${words}`}
        disabled={!plan.value}
        onClick={() => plan.value && act(keeper.keepAside(copyOf(plan.value)))}
      >
        Duplicate
      </button>
      {remove}
    </Card>
  )
}

const saveText = async (draft: DraftEntry, keeper: Keeper) =>
  download(`${draft.title || 'kept plan'}.txt`, await keeper.textOf(draft.key), 'text/plain')
