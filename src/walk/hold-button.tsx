import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'

/** Long enough that no wet sleeve does it, ms. */
const HOLD_MS = 700

/** A button that a slip does not press: it has to be held. Keys and screen readers press it as any other. */
export function HoldButton({ words, onHeld }: { words: string; onHeld: () => void }) {
  const isHeld = useSignal(false)
  const timer = useRef<number | undefined>(undefined)
  const letGo = () => {
    clearTimeout(timer.current)
    isHeld.value = false
  }
  useEffect(() => letGo, [])
  return (
    <button
      type="button"
      class={isHeld.value ? 'hold held' : 'hold'}
      onPointerDown={() => {
        isHeld.value = true
        timer.current = window.setTimeout(() => {
          letGo()
          onHeld()
        }, HOLD_MS)
      }}
      onPointerUp={letGo}
      onPointerLeave={letGo}
      onPointerCancel={letGo}
      onContextMenu={(event) => event.preventDefault()}
      onClick={({ detail }) => {
        if (detail === 0) onHeld()
      }}
    >
      {words}
    </button>
  )
}
