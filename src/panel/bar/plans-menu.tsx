import { useSignal } from '@preact/signals'
import type { Store } from '../../state/store'
import type { Keeper } from '../../storage/keeper'
import { loadWhenShown } from '../load-when-shown'
import { Menu } from './menu'

interface Props {
  readonly store: Store
  readonly keeper: Keeper | null
  readonly onDemo: () => void
}

const PlanChoices = loadWhenShown(async () => (await import('./plan-choices')).PlanChoices)

/** Plans: from and to a file, a new one, the demo, and those kept in this browser. */
export function PlansMenu(props: Props) {
  /** How often the menu was opened: each time it looks anew. */
  const openings = useSignal(0)
  return (
    <Menu
      title="Plans"
      hint="Open, save and keep plans"
      onOpen={() => {
        openings.value += 1
      }}
    >
      {openings.value > 0 && <PlanChoices {...props} openings={openings.value} />}
    </Menu>
  )
}
