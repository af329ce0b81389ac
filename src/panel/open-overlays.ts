import { type ReadonlySignal, signal } from '@preact/signals'

/** The dialogs and menus that lie open over the page, the last opened last. */
interface Overlays {
  readonly open: ReadonlySignal<readonly HTMLElement[]>
  /** Closes the last opened, as its own button does. */
  readonly closeLast: () => void
}

/** Follows whichever dialog or menu opens and closes on the page, whoever made it. */
export function followOverlays(): Overlays {
  const open = signal<readonly HTMLElement[]>([])
  const dialogs = document.getElementsByTagName('dialog')
  const menus = new Set<HTMLElement>()
  const look = () => {
    const now = [...menus, ...[...dialogs].filter((dialog) => dialog.open)].filter((each) => each.isConnected)
    const before = open.peek()
    const stay = before.filter((each) => now.includes(each))
    const come = now.filter((each) => !before.includes(each))
    if (come.length > 0 || stay.length < before.length) open.value = [...stay, ...come]
  }
  document.addEventListener(
    'toggle',
    (event) => {
      if (!(event.target instanceof HTMLElement) || !event.target.popover) return
      if ((event as ToggleEvent).newState === 'open') menus.add(event.target)
      else menus.delete(event.target)
      look()
    },
    { capture: true },
  )
  // A dialog is also gone when its element is. What the map draws, which is much, holds none: there only opening counts.
  const watch = (id: string, more: MutationObserverInit) => {
    const element = document.getElementById(id)
    if (element)
      new MutationObserver(look).observe(element, { subtree: true, attributeFilter: ['open'], ...more })
  }
  watch('table', { childList: true })
  watch('map', {})
  look()
  return {
    open,
    closeLast: () => {
      const last = open.peek().at(-1)
      if (last instanceof HTMLDialogElement) last.close()
      else last?.hidePopover()
    },
  }
}
