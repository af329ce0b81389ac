import { LAYS } from '../../plan/lays'
import { insertBend, removeBend, setLays } from '../../plan/leg-edits'
import { deleteLine } from '../../state/removals'
import type { Selection } from '../../state/selection'
import type { Store } from '../../state/store'
import { LAY_WORDS } from '../../words/plan-words'
import type { Aim, Bench } from '../bench'
import { placeWords } from '../frame/place-words'
import { describe } from '../tools/describe'
import { pick } from '../tools/pick'
import { placeUnder } from '../tools/place'
import { removePicked } from '../tools/remove-picked'
import { renameSelected } from '../tools/rename'
import { sceneOf } from '../tools/scene'
import { selectionOf } from '../tools/selection-of'
import { placeStation } from '../tools/station-tool'
import { type Here, whatsHere } from '../tools/whats-here'

interface Choice {
  readonly words: string
  readonly act: () => void
}

/** What can be done with a thing on the map. */
export function choicesFor(bench: Bench, found: Here, aim: Aim): readonly Choice[] {
  const { edit, locked } = bench.store
  if (locked.peek())
    return [
      {
        words: 'Unlock the plan',
        act: () => {
          locked.value = false
        },
      },
    ]
  switch (found?.kind) {
    case 'station':
    case 'hazard':
    case 'corner':
      return [
        { words: 'Rename', act: () => renameSelected(bench) },
        { words: 'Delete', act: () => removePicked(bench) },
      ]
    case 'bend':
      return [
        { words: 'Remove this bend', act: () => edit((plan) => removeBend(plan, found.line, found.index)) },
        { words: 'Delete the line', act: () => deleteLine(bench.store, found.line) },
      ]
    case 'leg':
      return [
        {
          words: 'Station here',
          act: () => {
            const place = placeUnder(bench, aim, 0)
            if (place.kind !== 'station') placeStation(bench, place)
          },
        },
        {
          words: 'Bend here',
          act: () => edit((plan) => insertBend(plan, found.line, found.leg, aim.position)),
        },
        ...LAYS.map((lay) => ({
          words: `Lay: ${LAY_WORDS[lay]}`,
          act: () => edit((plan) => setLays(plan, found.line, [found.leg], lay)),
        })),
        { words: 'Delete the line', act: () => deleteLine(bench.store, found.line) },
      ]
    default:
      return [
        { words: 'Station here', act: () => placeStation(bench, { kind: 'ground', position: aim.position }) },
      ]
  }
}

/** For fingers, who have no Shift key: what was selected before stays selected with it. */
function togetherWith(store: Store, found: Here, before: Selection): readonly Choice[] {
  const together = found?.kind === 'station' || found?.kind === 'leg' ? selectionOf(found, before) : null
  if (together?.kind !== 'several') return []
  return [
    {
      words: 'Select with the others',
      act: () => {
        store.selection.value = together
      },
    },
  ]
}

/** A menu under a long press, a right click or the menu key. */
export function showMenu(bench: Bench): { open: (aim: Aim) => void; remove: () => void } {
  const { view, store } = bench
  const sheet = document.createElement('div')
  sheet.className = 'map-menu'
  sheet.hidden = true
  const place = document.createElement('p')
  const menu = document.createElement('div')
  menu.setAttribute('role', 'menu')
  sheet.append(place, menu)
  view.container.after(sheet)

  /** The finger whose long press has opened the menu may lift over a choice: that is no choice yet. */
  let pressed = false

  const close = () => {
    if (sheet.hidden) return
    sheet.hidden = true
    store.mapMenu.value = null
    menu.replaceChildren()
  }
  const closeOutside = (event: PointerEvent) => {
    if (!(event.target instanceof Node && sheet.contains(event.target))) close()
  }
  /** Wherever the focus is: a finger that is lifted may take it away from the menu. */
  const closeByKey = (event: KeyboardEvent) => {
    if (sheet.hidden || event.key !== 'Escape') return
    event.preventDefault()
    event.stopPropagation()
    close()
    view.container.focus()
  }
  const buttons = () => [...menu.querySelectorAll('button')]

  sheet.addEventListener('pointerdown', () => {
    pressed = true
  })
  menu.addEventListener('keydown', (event) => {
    const all = buttons()
    const at = all.indexOf(document.activeElement as HTMLButtonElement)
    const by = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0
    if (by) all[(at + by + all.length) % all.length]?.focus()
    if (event.key === 'Tab') {
      close()
      view.container.focus()
    }
    if (by) event.preventDefault()
    event.stopPropagation()
  })
  addEventListener('pointerdown', closeOutside, { capture: true })
  addEventListener('keydown', closeByKey, { capture: true })
  view.map.on('movestart zoomstart', close)

  const open = (aim: Aim) => {
    const found = whatsHere(sceneOf(store.plan.peek(), bench), aim.point, aim.reachPx)
    const before = store.selection.peek()
    pick(bench, found)
    menu.setAttribute('aria-label', describe(store.plan.peek(), found) || 'Map')
    menu.replaceChildren(
      ...[...togetherWith(store, found, before), ...choicesFor(bench, found, aim)].map(({ words, act }) => {
        const button = document.createElement('button')
        button.type = 'button'
        button.setAttribute('role', 'menuitem')
        button.textContent = words
        button.addEventListener('click', ({ detail }) => {
          const byPointer = detail > 0
          if (byPointer && !pressed) return
          close()
          view.container.focus()
          act()
        })
        return button
      }),
    )
    place.textContent = placeWords(store, aim.position)
    sheet.hidden = false
    store.mapMenu.value = { close }
    pressed = false
    const at = view.map.layerPointToContainerPoint([aim.point.x, aim.point.y])
    const size = view.map.getSize()
    const x = Math.max(4, Math.min(at.x, size.x - sheet.offsetWidth - 4))
    const y = Math.max(4, Math.min(at.y, size.y - sheet.offsetHeight - 4))
    sheet.style.transform = `translate(${x}px, ${y}px)`
    buttons()[0]?.focus({ preventScroll: true })
  }
  return {
    open,
    remove: () => {
      removeEventListener('pointerdown', closeOutside, { capture: true })
      removeEventListener('keydown', closeByKey, { capture: true })
      sheet.remove()
    },
  }
}
