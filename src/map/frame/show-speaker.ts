import { effect } from '../../state/steady-effect'
import type { Store } from '../../state/store'
import type { MapView } from '../view/map-view'

const KEYS =
  'Arrow keys move the crosshair, with Shift faster. Enter or Space acts as a click there. Tab goes from station to station; Escape, then Tab, leaves the map. Alt with arrows, or M, moves what is selected. Plus and minus zoom. S, O, B, W set the lay. Delete removes. F2 renames.'

let count = 0

/** What the map is to those who do not see it: its name, its keys, what is on it, and what happens. */
export function showSpeaker(
  view: MapView,
  store: Store,
): { say: (sentence: string) => void; remove: () => void } {
  const { container } = view
  const summary = document.createElement('p')
  summary.className = 'unseen'
  summary.id = `map-summary-${++count}`
  const live = document.createElement('div')
  live.className = 'unseen'
  live.setAttribute('role', 'status')
  container.tabIndex = 0
  container.setAttribute('role', 'application')
  container.setAttribute('aria-roledescription', 'map')
  container.setAttribute('aria-label', 'Map of the plan')
  container.setAttribute('aria-describedby', summary.id)
  container.after(summary, live)
  const stop = effect(() => {
    const { stations, lines, hazards } = store.settled.value
    summary.textContent = `${stations.size} stations, ${lines.size} lines, ${hazards.size} hazards. ${KEYS}`
  })
  return {
    say: (sentence) => {
      live.textContent = sentence
    },
    remove: () => {
      stop()
      summary.remove()
      live.remove()
    },
  }
}
