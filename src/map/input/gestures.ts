import type { Aim, Hold, MapTool } from '../bench'
import type { MapView, Point } from '../view/map-view'

/** How far a pointer may stray and still click, px; how soon a second click makes a double one, ms; how long a press is long, ms. */
const STRAY_PX = { mouse: 4, touch: 10 }
const DOUBLE_MS = 350
const LONG_MS = 550
/** How near a thing must be to be meant, px: a finger is wider than a mouse. */
export const REACH_PX = { mouse: 8, touch: 22 }

interface Press {
  readonly pointerId: number
  readonly start: Aim
  /** Where on the screen: the map itself moves along while it is panned. */
  readonly startAt: Point
  /** Where the corner of the map is on the screen: it stays there while a pointer is down, and to ask has the page laid out once more in each frame. */
  readonly corner: Point
  readonly hold: Hold | null
  readonly long: ReturnType<typeof setTimeout> | undefined
  moved: boolean
}

export interface Pointers {
  /** Puts back what is being dragged; says whether anything was. */
  letGo(): boolean
  remove(): void
}

/** Turns what mouse, pen and finger do on the map into the gestures of the tool in hand. */
export function followPointers(
  view: MapView,
  tool: () => MapTool,
  { menu, aimed }: { menu: (aim: Aim) => void; aimed: (aim: Aim | null) => void },
): Pointers {
  const { container, map } = view
  let press: Press | null = null
  let lastClick: { at: Point; atMs: number; with: MapTool } | null = null
  let waiting: { aim: Aim; frame: number } | null = null

  const cornerAt = (event: MouseEvent): Point => {
    const { x, y } = map.mouseEventToContainerPoint(event)
    return { x: event.clientX - x, y: event.clientY - y }
  }

  const aimOf = (event: PointerEvent | MouseEvent, corner = press?.corner ?? cornerAt(event)): Aim => {
    const { x, y } = map.containerPointToLayerPoint([event.clientX - corner.x, event.clientY - corner.y])
    const touch = 'pointerType' in event && event.pointerType === 'touch'
    const point = { x, y }
    return {
      point,
      position: view.positionOf(point),
      reachPx: touch ? REACH_PX.touch : REACH_PX.mouse,
      adding: event.shiftKey,
      touch,
    }
  }

  /** However many moves come, the map is drawn once a frame. */
  const moveSoon = (aim: Aim) => {
    if (waiting) waiting.aim = aim
    else waiting = { aim, frame: requestAnimationFrame(moveNow) }
  }
  const moveNow = () => {
    if (!waiting) return
    const { aim, frame } = waiting
    cancelAnimationFrame(frame)
    waiting = null
    aimed(aim)
    if (press?.hold && press.moved) press.hold.move(aim)
    else if (!press) tool().hover?.(aim)
  }

  const release = (): Press | null => {
    const ended = press
    if (!ended) return null
    clearTimeout(ended.long)
    press = null
    if (ended.hold) map.dragging.enable()
    return ended
  }
  const letGo = (): boolean => {
    waiting = null
    const ended = release()
    ended?.hold?.letGo()
    return ended?.moved === true && ended.hold !== null
  }
  const onCancel = () => {
    letGo()
  }

  const onDown = (event: PointerEvent) => {
    if (press) {
      // A second finger: the map is being pinched.
      letGo()
      return
    }
    if (event.button !== 0 || !event.isPrimary) return
    const corner = cornerAt(event)
    const start = aimOf(event, corner)
    const hold = tool().hold?.(start) ?? null
    if (hold) map.dragging.disable()
    const long = start.touch
      ? setTimeout(() => {
          letGo()
          menu(start)
        }, LONG_MS)
      : undefined
    press = {
      pointerId: event.pointerId,
      start,
      startAt: screenPoint(event),
      corner,
      hold,
      long,
      moved: false,
    }
  }
  const onMove = (event: PointerEvent) => {
    const aim = aimOf(event)
    if (!press) {
      if (event.target instanceof Node && container.contains(event.target)) moveSoon(aim)
      return
    }
    if (event.pointerId !== press.pointerId) return
    const stray = aim.touch ? STRAY_PX.touch : STRAY_PX.mouse
    if (!press.moved && distance(screenPoint(event), press.startAt) > stray) {
      press.moved = true
      clearTimeout(press.long)
    }
    if (press.moved) moveSoon(aim)
  }
  const onUp = (event: PointerEvent) => {
    if (event.pointerId !== press?.pointerId) return
    moveNow()
    const ended = release()!
    if (ended.moved) {
      ended.hold?.drop()
      return
    }
    ended.hold?.letGo()
    const aim = aimOf(event)
    if (aim.touch) aimed(aim)
    const at = screenPoint(event)
    const double =
      lastClick?.with === tool() &&
      event.timeStamp - lastClick.atMs < DOUBLE_MS &&
      distance(at, lastClick.at) < (aim.touch ? REACH_PX.touch : STRAY_PX.mouse * 2)
    lastClick = double ? null : { at, atMs: event.timeStamp, with: tool() }
    if (double && tool().doubleClick) tool().doubleClick!(aim)
    else tool().click(aim)
  }
  const onLeave = (event: PointerEvent) => {
    // A finger that is lifted leaves the map, and still wants to read where it was.
    if (event.pointerType !== 'touch') aimed(null)
  }
  const onMenu = (event: MouseEvent) => {
    event.preventDefault()
    if (press?.start.touch) return
    if ('pointerType' in event && event.pointerType === 'touch') return
    menu(aimOf(event))
  }

  // Chromium takes a flick for a scroll, though there is nothing to scroll, and for the next second a tap for what ends it.
  const onTouchMove = (event: TouchEvent) => {
    if (event.cancelable) event.preventDefault()
  }

  // Before Leaflet hears of a press, so that it does not pan what is being dragged.
  container.addEventListener('pointerdown', onDown, { capture: true })
  container.addEventListener('pointerleave', onLeave)
  container.addEventListener('touchmove', onTouchMove, { passive: false })
  container.addEventListener('contextmenu', onMenu)
  addEventListener('pointermove', onMove)
  addEventListener('pointerup', onUp)
  addEventListener('pointercancel', onCancel)
  return {
    letGo,
    remove: () => {
      letGo()
      container.removeEventListener('pointerdown', onDown, { capture: true })
      container.removeEventListener('pointerleave', onLeave)
      container.removeEventListener('touchmove', onTouchMove)
      container.removeEventListener('contextmenu', onMenu)
      removeEventListener('pointermove', onMove)
      removeEventListener('pointerup', onUp)
      removeEventListener('pointercancel', onCancel)
    },
  }
}

const screenPoint = (event: PointerEvent): Point => ({ x: event.clientX, y: event.clientY })
const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y)
