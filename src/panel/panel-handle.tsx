import { useSignal } from '@preact/signals'
import { useRef } from 'preact/hooks'

/** Heights of the panel below the map on a phone, as parts of the screen. */
const HEIGHTS = [0.16, 0.36, 0.72] as const
const LAST = HEIGHTS.length - 1

/** On a phone: pulls the panel up and down over three heights. Its buttons and the arrow keys take the next; a tap on the grip, too. */
export function PanelHandle() {
  const step = useSignal(1)
  const pulled = useRef(false)

  const show = (part: number) =>
    document.documentElement.style.setProperty('--panel-height', `${(part * 100).toFixed(1)}dvh`)
  const settle = (next: number) => {
    step.value = Math.min(LAST, Math.max(0, next))
    show(HEIGHTS[step.value]!)
  }
  /** Of the screen, from its lower edge, where the tools are, to the finger. */
  const partAt = (event: PointerEvent & { currentTarget: Element }) => {
    const lower = event.currentTarget.closest('.panel')?.getBoundingClientRect().bottom ?? innerHeight
    return Math.min(0.78, Math.max(0.1, (lower - event.clientY) / innerHeight))
  }
  const stepButton = (words: string, sign: string, by: number) => (
    <button
      type="button"
      aria-label={words}
      title={words}
      disabled={step.value + by < 0 || step.value + by > LAST}
      onClick={() => settle(step.value + by)}
    >
      {sign}
    </button>
  )

  return (
    <div class="handle">
      {stepButton('Panel lower', '▾', -1)}
      <button
        type="button"
        class="grip"
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
        onPointerCancel={() => settle(step.value)}
        onKeyDown={(event) => {
          const by = { ArrowUp: 1, ArrowDown: -1, Home: -LAST, End: LAST }[event.key]
          if (by === undefined) return
          settle(step.value + by)
          event.preventDefault()
        }}
        onClick={() => {
          // The click that ends a pull is no tap.
          if (!pulled.current) settle((step.value + 1) % HEIGHTS.length)
          pulled.current = false
        }}
      >
        <span />
      </button>
      {stepButton('Panel higher', '▴', 1)}
    </div>
  )
}
