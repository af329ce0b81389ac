import { useSignal } from '@preact/signals'
import { useRef } from 'preact/hooks'

/** Heights of the panel below the map on a phone, as parts of the screen. */
const HEIGHTS = [0.16, 0.45, 0.72] as const

/** On a phone: pulls the panel up and down over three heights. A tap, or a key, takes the next. */
export function PanelHandle() {
  const step = useSignal(1)
  const pulled = useRef(false)

  const show = (part: number) =>
    document.documentElement.style.setProperty('--panel-height', `${(part * 100).toFixed(1)}dvh`)
  const settle = (next: number) => {
    step.value = next
    show(HEIGHTS[next]!)
  }
  const partAt = (event: PointerEvent) => Math.min(0.85, Math.max(0.1, 1 - event.clientY / innerHeight))

  return (
    <button
      type="button"
      class="handle"
      aria-label={`Height of the panel: ${step.value + 1} of ${HEIGHTS.length}`}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId)
        pulled.current = false
      }}
      onPointerMove={(event) => {
        if (!event.currentTarget.hasPointerCapture(event.pointerId) || Math.abs(event.movementY) < 1) return
        pulled.current = true
        show(partAt(event))
      }}
      onPointerUp={(event) => {
        if (!pulled.current) return
        const part = partAt(event)
        const far = HEIGHTS.map((height) => Math.abs(height - part))
        settle(far.indexOf(Math.min(...far)))
      }}
      onClick={() => {
        // The click that ends a pull is no tap.
        if (!pulled.current) settle((step.value + 1) % HEIGHTS.length)
        pulled.current = false
      }}
    >
      <span />
    </button>
  )
}
