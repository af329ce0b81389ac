import type { RefObject } from 'preact'
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks'
import { onNameRequested } from '../state/requests'
import type { Selection } from '../state/selection'
import type { Store } from '../state/store'
import './panel.css'
import './lists.css'
import './notices.css'
import { loadWhenShown } from './load-when-shown'
import { PlanCard } from './whole/plan-card'

const CircuitCard = loadWhenShown(async () => (await import('./circuit/circuit-card')).CircuitCard)
const SeveralCard = loadWhenShown(async () => (await import('./several-card')).SeveralCard)
const HazardCard = loadWhenShown(async () => (await import('./hazard-card')).HazardCard)
const PanelHandle = loadWhenShown(async () => (await import('./panel-handle')).PanelHandle)
const LineCard = loadWhenShown(async () => (await import('./line/line-card')).LineCard)
const AtThisThing = loadWhenShown(async () => (await import('./carry/at-this-thing')).AtThisThing)
const StationCard = loadWhenShown(async () => (await import('./station-card')).StationCard)

/** The side panel: what is selected, or the whole plan where nothing is. */
export function Panel({ store }: { store: Store }) {
  const selection = store.selection.value
  const panel = useRef<HTMLElement>(null)
  const shown = selection ? `${selection.kind} ${selection.id}` : 'plan'
  useEffect(() => onNameRequested(() => takeCursor(panel.current)), [])
  useKeptFocus(panel, shown)
  // Another card, and another plan, begins at its top.
  const isScrolled = useRef(false)
  useLayoutEffect(() => {
    // To ask for the place, or to set it, has the whole page laid out at once: only where it was scrolled at all.
    if (panel.current && isScrolled.current) panel.current.scrollTop = 0
  }, [shown, store.opened.value])
  return (
    <aside
      class="panel"
      aria-label="Figures"
      ref={panel}
      onScroll={({ currentTarget }) => {
        isScrolled.current = currentTarget.scrollTop > 0
      }}
    >
      <PanelHandle />
      <div class="card">
        {selection && (
          <button
            type="button"
            class="quiet back"
            onClick={() => {
              store.selection.value = null
            }}
          >
            ← The whole plan
          </button>
        )}
        {(store.sharing.value || store.toChoose.value) && <AtThisThing store={store} />}
        {/* A card of its own for each thing, so that no refused text wanders to the next. */}
        <Card key={shown} store={store} selection={selection} />
      </div>
    </aside>
  )
}

/** A button that leads to another card goes with its own: whoever works by keys goes on at the new card's title. */
function useKeptFocus(panel: RefObject<HTMLElement | null>, shown: string) {
  const within = useRef(false)
  useEffect(() => {
    const follow = ({ target }: FocusEvent) => {
      within.current = target instanceof Node && panel.current?.contains(target) === true
    }
    document.addEventListener('focusin', follow)
    return () => document.removeEventListener('focusin', follow)
  }, [])
  useLayoutEffect(() => {
    if (!within.current || panel.current?.contains(document.activeElement)) return
    const title = panel.current?.querySelector<HTMLElement>('.card h1')
    if (title) title.tabIndex = -1
    // A card that is still being fetched has no title yet.
    const place = title ?? panel.current?.querySelector<HTMLElement>('.back')
    place?.focus({ preventScroll: true })
  }, [shown])
}

/** A card that has not come by then leaves the cursor where it is, ms. */
const PATIENCE_MS = 2000

/**
 * Every card begins with the name of its thing; the card of a new selection is drawn first. Enter and Escape lead back to
 * where the person came from.
 */
function takeCursor(panel: HTMLElement | null) {
  const from = document.activeElement
  const until = performance.now() + PATIENCE_MS
  const take = () => {
    const field = panel?.querySelector<HTMLInputElement>('.card input[type="text"]')
    // A card that is still being fetched has no field yet.
    if (!field && performance.now() < until) {
      requestAnimationFrame(take)
      return
    }
    field?.select()
    const back = (event: KeyboardEvent) => {
      if ((event.key === 'Enter' || event.key === 'Escape') && from instanceof HTMLElement) from.focus()
    }
    field?.addEventListener('keydown', back)
    field?.addEventListener('blur', () => field.removeEventListener('keydown', back), { once: true })
  }
  requestAnimationFrame(take)
}

function Card({ store, selection }: { store: Store; selection: Selection }) {
  switch (selection?.kind) {
    case 'station':
      return <StationCard store={store} id={selection.id} />
    case 'line':
      return <LineCard store={store} id={selection.id} />
    case 'circuit':
      return <CircuitCard store={store} id={selection.id} />
    case 'hazard':
      return <HazardCard store={store} id={selection.id} />
    case 'several':
      return <SeveralCard store={store} several={selection} />
    case undefined:
      return <PlanCard store={store} />
  }
}
