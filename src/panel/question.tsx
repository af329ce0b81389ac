import { useSignal } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'

/** A part of a card: its heading is a question, and what stands under it begins with the answer. */
export function Question({ ask, children }: { ask: string; children: ComponentChildren }) {
  const id = useId()
  return (
    <section class="question" aria-labelledby={id}>
      <h2 id={id}>{ask}</h2>
      {children}
    </section>
  )
}

/** What is shown on demand, and costs nothing until then. */
export function OnDemand({ title, children }: { title: string; children: ComponentChildren }) {
  const open = useSignal(false)
  return (
    <details
      class="on-demand"
      onToggle={(event) => {
        open.value = event.currentTarget.open
      }}
    >
      <summary>{title}</summary>
      {open.value && children}
    </details>
  )
}
