import { useSignal } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'

interface QuestionProps {
  readonly ask: string
  /** Id of a question that a button elsewhere on the card leads to. */
  readonly anchor?: string
  readonly children: ComponentChildren
}

/** A part of a card: its heading is a question, and what stands under it begins with the answer. */
export function Question({ ask, anchor, children }: QuestionProps) {
  const id = useId()
  return (
    <section
      class="question"
      aria-labelledby={id}
      id={anchor}
      tabIndex={anchor === undefined ? undefined : -1}
    >
      <h2 id={id}>{ask}</h2>
      {children}
    </section>
  )
}

/** Leads eye and keyboard to a question further down the card. */
export function goToQuestion(anchor: string): void {
  const question = document.getElementById(anchor)
  question?.scrollIntoView({ block: 'start' })
  question?.focus({ preventScroll: true })
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
