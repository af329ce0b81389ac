import { useSignal } from '@preact/signals'
import { EMPTY_PLAN } from '../../plan/plan'
import type { Store } from '../../state/store'
import type { DraftEntry } from '../../storage/drafts'
import type { Keeper } from '../../storage/keep-drafts'
import { choosePlanFile, savePlanFile } from '../../storage/open-save'
import { closeMenuOf, Menu } from './menu'

interface Props {
  readonly store: Store
  readonly keeper: Keeper | null
  readonly onDemo: () => void
}

const WHEN = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' })

/** Plans: from and to a file, a new one, the demo, and those kept in this browser. */
export function PlansMenu({ store, keeper, onDemo }: Props) {
  const kept = useSignal<readonly DraftEntry[]>([])
  /** Key of the plan of which a second press takes leave. */
  const doubted = useSignal('')
  const look = async () => {
    doubted.value = ''
    await keeper?.flush()
    kept.value = (await keeper?.list()) ?? []
  }
  const removal = ({ key }: DraftEntry) => (doubted.value === key ? 'Remove for good' : 'Remove')
  const choice = (text: string, act: () => void) => (
    <button
      type="button"
      onClick={(event) => {
        closeMenuOf(event.currentTarget)
        act()
      }}
    >
      {text}
    </button>
  )
  return (
    <Menu title="Plans" hint="Open, save and keep plans" onOpen={() => void look()}>
      <div class="choices">
        {choice('Open a file…', () => choosePlanFile(store))}
        {choice('Save as a file…', () => void savePlanFile(store))}
        {choice('New plan', () => store.open({ ...EMPTY_PLAN }))}
        {choice('Demo plan', onDemo)}
      </div>
      <h2>Kept in this browser</h2>
      {!keeper && <p class="soft">This browser keeps none here: save the plan as a file.</p>}
      {keeper && kept.value.length === 0 && (
        <p class="soft">None yet. A plan is kept as soon as you change it.</p>
      )}
      <ul class="rows">
        {kept.value.map((draft) => (
          <li key={draft.key}>
            <button
              type="button"
              class="quiet"
              onClick={(event) => {
                closeMenuOf(event.currentTarget)
                void keeper?.open(draft.key)
              }}
            >
              {draft.title || 'Without a title'}
              <span class="soft"> {WHEN.format(draft.savedAt)}</span>
            </button>
            <button
              type="button"
              class={doubted.value === draft.key ? 'harm' : undefined}
              aria-label={`${removal(draft)} ${draft.title}, ${WHEN.format(draft.savedAt)}`}
              onClick={() => {
                if (doubted.value === draft.key) void keeper?.remove(draft.key).then(look)
                else doubted.value = draft.key
              }}
            >
              {removal(draft)}
            </button>
          </li>
        ))}
      </ul>
      <p class="soft">
        <a href="licences.txt" target="_blank" rel="noreferrer">
          Licences of the packages in this program
        </a>
      </p>
    </Menu>
  )
}
