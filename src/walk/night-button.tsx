import { useRef } from 'preact/hooks'
import type { Theme } from '../state/preferences'
import type { Store } from '../state/store'

/** Red on black for eyes that see in the dark, and back to what was before. */
export function NightButton({ store }: { store: Store }) {
  const before = useRef<Theme>('light')
  const isNight = store.theme.value === 'night'
  return (
    <button
      type="button"
      aria-pressed={isNight}
      onClick={() => {
        if (!isNight) before.current = store.theme.peek()
        store.theme.value = isNight ? before.current : 'night'
      }}
    >
      Night
    </button>
  )
}
