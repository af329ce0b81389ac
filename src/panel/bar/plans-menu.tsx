import { useSignal } from '@preact/signals'
import { EMPTY_PLAN } from '../../plan/plan'
import type { Store } from '../../state/store'
import type { Keeper } from '../../storage/keeper'
import { chooseAnyFiles } from '../../storage/open-dropped'
import { broughtElevations, savePlanFile } from '../../storage/open-save'
import { loadWhenShown } from '../load-when-shown'
import { closeMenuOf, Menu } from './menu'
import { ReleaseLine } from './release-line'

interface Props {
  readonly store: Store
  readonly keeper: Keeper | null
  readonly onDemo: () => void
}

const SaveForOthers = loadWhenShown(async () => (await import('./save-for-others')).SaveForOthers)
const KeptPlans = loadWhenShown(async () => (await import('./kept-plans')).KeptPlans)

/** Plans: from and to a file, a new one, the demo, and those kept in this browser. */
export function PlansMenu({ store, keeper, onDemo }: Props) {
  /** How often the menu was opened: each time it looks anew. */
  const openings = useSignal(0)
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
    <Menu
      title="Plans"
      hint="Open, save and keep plans"
      onOpen={() => {
        openings.value += 1
      }}
    >
      <div class="choices">
        {choice('Open a file…', () =>
          chooseAnyFiles(store, async (plan) => (await keeper?.keepAside(plan)) ?? false),
        )}
        {choice('Save as a file…', () => void savePlanFile(store))}
        {broughtElevations(store.grids.value).length > 0 &&
          choice('Save with its elevations…', () => void savePlanFile(store, true))}
        {choice('Hand the plan on…', () => {
          store.carrying.value = 'out'
        })}
        {choice('Take one from a screen…', () => {
          store.carrying.value = 'in'
        })}
        {choice('From what lies on the shelf…', () => {
          store.shelfIsOpen.value = true
        })}
        {choice('New plan', () => store.open({ ...EMPTY_PLAN }))}
        {choice('Demo plan', onDemo)}
      </div>
      {openings.value > 0 && <SaveForOthers store={store} />}
      {openings.value > 0 && keeper && <KeptPlans key={openings.value} store={store} keeper={keeper} />}
      <ReleaseLine store={store} />
      <p class="soft">
        <a href="licences.txt" target="_blank" rel="noreferrer">
          Licences of the packages in this program
        </a>
      </p>
    </Menu>
  )
}
