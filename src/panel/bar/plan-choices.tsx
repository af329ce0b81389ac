import { EMPTY_PLAN } from '../../plan/plan'
import type { Store } from '../../state/store'
import type { Keeper } from '../../storage/keeper'
import { chooseAnyFiles } from '../../storage/open-dropped'
import { broughtElevations, savePlanFile } from '../../storage/save-plan-file'
import { KeptPlans } from './kept-plans'
import { closeMenuOf } from './menu'
import { ReleaseLine } from './release-line'
import { SaveForOthers } from './save-for-others'

interface Props {
  readonly store: Store
  readonly keeper: Keeper | null
  readonly onDemo: () => void
}

/** What can be done with plans, as the menu shows it. `openings` counts how often it was opened: each time it looks anew. */
export function PlanChoices({ store, keeper, onDemo, openings }: Props & { readonly openings: number }) {
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
    <>
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
        {choice('Change it together…', () => {
          store.carrying.value = 'together'
        })}
        {choice('Take one from a screen…', () => {
          store.carrying.value = 'in'
        })}
        {choice('From what lies on the shelf…', () => {
          store.shelfIsOpen.value = true
        })}
        {keeper &&
          choice('Everything of mine as a file…', async () => {
            const { saveEverything } = await import('../../storage/everything')
            await saveEverything(store, keeper)
          })}
        {choice('New plan', () => store.open({ ...EMPTY_PLAN }))}
        {choice('Demo plan', onDemo)}
      </div>
      <SaveForOthers store={store} />
      {keeper && <KeptPlans key={openings} store={store} keeper={keeper} />}
      <ReleaseLine store={store} />
      <p class="soft">
        <a href="licences.txt" target="_blank" rel="noreferrer">
          Licences of the packages in this program
        </a>
      </p>
    </>
  )
}
