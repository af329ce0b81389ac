import { LAYS } from '../../plan/lays'
import { setLays } from '../../plan/leg-edits'
import { LAY_LETTERS, LAY_WORDS } from '../../words/plan-words'
import type { Aim, Bench, MapTool } from '../bench'
import { describe } from '../tools/describe'
import { removePicked } from '../tools/remove-picked'
import { renameSelected } from '../tools/rename'
import { sceneOf } from '../tools/scene'
import { whatsHere } from '../tools/whats-here'
import type { Crosshair } from './crosshair'
import type { Pointers } from './gestures'
import { keyMover } from './move-by-keys'
import { tabStops } from './tab-stops'

const ARROWS: Readonly<Record<string, { x: number; y: number }>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
}
const STEP_PX = 8
const FAST = 5

/** What the keys work with besides the tools. */
interface KeyHands {
  readonly crosshair: Crosshair
  readonly pointers: Pointers
  readonly menu: (aim: Aim) => void
  /** Told where the crosshair has come to. */
  readonly aimed: (aim: Aim) => void
}

/** Everything that the mouse does, by keyboard, while the map has the focus. */
export function followKeys(
  bench: Bench,
  tool: () => MapTool,
  { crosshair, pointers, menu, aimed }: KeyHands,
): () => void {
  const { store, view } = bench
  const mover = keyMover(bench)
  const stops = tabStops(bench, crosshair)
  /** Where Enter acts: at the crosshair if the keyboard leads, else where the pointer was last. */
  const aim = (event: KeyboardEvent) => crosshair.aim(event.shiftKey)

  const layKeys = new Map(LAYS.map((lay) => [LAY_LETTERS[lay].toLowerCase(), lay]))
  const setLay = (key: string): boolean => {
    const lay = layKeys.get(key.toLowerCase())
    if (!lay) return false
    const selection = store.selection.peek()
    const line = selection?.kind === 'line' ? store.plan.peek().lines.get(selection.id) : undefined
    if (selection?.kind === 'line' && line && !tool().underWay?.()) {
      const legs = selection.legs.length ? selection.legs : line.legs.map((_, i) => i)
      store.edit((plan) => setLays(plan, line.id, legs, lay))
      bench.say(`${legs.length === 1 ? 'Leg' : `${legs.length} legs`}: ${LAY_WORDS[lay]}`)
    } else {
      bench.lay.value = lay
      bench.say(`New legs: ${LAY_WORDS[lay]}`)
    }
    return true
  }

  const onArrow = (event: KeyboardEvent): boolean => {
    const arrow = ARROWS[event.key]
    if (!arrow) return false
    const px = STEP_PX * (event.shiftKey ? FAST : 1)
    const by = { x: arrow.x * px, y: arrow.y * px }
    if (event.altKey || mover.active()) return mover.move(by)
    crosshair.move(by)
    tool().hover?.(aim(event))
    aimed(aim(event))
    sayUnder(aim(event))
    return true
  }

  let under = ''
  /** Tells once what the crosshair has come upon. */
  const sayUnder = ({ point, reachPx }: Aim) => {
    const plan = store.settled.peek()
    const now = describe(plan, whatsHere(sceneOf(plan, bench), point, reachPx))
    if (now && now !== under) bench.say(now)
    under = now
  }

  const act = (event: KeyboardEvent): boolean => {
    if (event.key.length === 1 && event.key !== ' ' && store.letterKeys.peek() === 'off') return false
    switch (event.key) {
      case 'Enter':
        if (mover.end(true)) return true
        if (tool().underWay?.() && tool().finish?.(aim(event))) return true
        tool().click(aim(event))
        return true
      case ' ':
        tool().click(aim(event))
        return true
      case 'Escape':
        return pointers.letGo() || mover.end(false) || Boolean(tool().cancel?.()) || leave()
      case 'Backspace':
      case 'Delete':
        return Boolean(tool().back?.()) || removePicked(bench)
      case 'F2':
        return renameSelected(bench)
      case 'Tab':
        return stops.go(event.shiftKey ? -1 : 1)
      case '+':
      case '=':
        view.map.zoomIn(1)
        return true
      case '-':
        view.map.zoomOut(1)
        return true
      case 'm':
      case 'M':
        return mover.start()
      case 'ContextMenu':
        menu(aim(event))
        return true
      case 'F10':
        if (event.shiftKey) menu(aim(event))
        return event.shiftKey
      default:
        return setLay(event.key)
    }
  }

  /** Undo while the hand is at work takes back what it is doing, not what it did before. */
  const stepBack = (): boolean => pointers.letGo() || mover.end(false) || Boolean(tool().back?.())

  /** Escape lets go of everything, and the next Tab leaves the map. */
  const leave = (): boolean => {
    const had = store.selection.peek() !== null || store.tool.peek() !== 'select'
    bench.picked.value = null
    store.selection.value = null
    store.tool.value = 'select'
    stops.leave()
    return had
  }

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey) {
      if (event.key.toLowerCase() === 'z' && !event.shiftKey && stepBack()) {
        event.preventDefault()
        event.stopPropagation()
      }
      return
    }
    if (event.key !== 'Tab' && event.key !== 'Shift') stops.stay()
    if (onArrow(event) || (!event.altKey && act(event))) {
      event.preventDefault()
      event.stopPropagation()
      // The line under way follows the crosshair, and takes up another lay at once.
      if (tool().underWay?.()) tool().hover?.(aim(event))
    }
  }
  const onKeyUp = (event: KeyboardEvent) => {
    if (event.key === 'Alt') mover.end(true)
  }
  const onBlur = () => mover.end(true)
  const { container } = view
  container.addEventListener('keydown', onKeyDown)
  container.addEventListener('keyup', onKeyUp)
  container.addEventListener('blur', onBlur)
  return () => {
    container.removeEventListener('keydown', onKeyDown)
    container.removeEventListener('keyup', onKeyUp)
    container.removeEventListener('blur', onBlur)
  }
}
