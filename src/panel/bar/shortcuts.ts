import type { Store, Tool } from '../../state/store'

/** Digits for the tools, because the map takes letters for the lays. */
export const SHORTCUTS: { readonly tools: Readonly<Record<Tool, string>> } = {
  tools: { select: '1', station: '2', line: '3', hazard: '4', measure: '5' },
}

/** Whether a key goes into text, or is the element's own. */
const isTyping = (target: EventTarget | null) =>
  target instanceof Element && target.closest('input, textarea, select, [contenteditable], dialog') !== null

/**
 * Follows the keys that work anywhere on the page, but for while something lies over the plan: what is not seen must not change. Returns the
 * undoing of itself.
 */
export function followShortcuts(store: Store, isCovered: () => boolean): () => void {
  const onKey = (event: KeyboardEvent) => {
    if (isTyping(event.target) || isCovered()) return
    const key = event.key.toLowerCase()
    if ((event.ctrlKey || event.metaKey) && !event.altKey) {
      if (key === 'z' && !event.shiftKey) store.undo()
      else if (key === 'y' || key === 'z') store.redo()
      else return
      event.preventDefault()
      return
    }
    if (key === '?' && !event.altKey && store.letterKeys.value === 'on') {
      store.helpIsOpen.value = true
      event.preventDefault()
      return
    }
    const tool = (Object.keys(SHORTCUTS.tools) as Tool[]).find((each) => SHORTCUTS.tools[each] === key)
    if (!tool || event.altKey || store.letterKeys.value === 'off') return
    store.tool.value = tool
    event.preventDefault()
  }
  addEventListener('keydown', onKey)
  return () => removeEventListener('keydown', onKey)
}
