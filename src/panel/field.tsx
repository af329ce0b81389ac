import './field.css'
import { useSignal } from '@preact/signals'
import type { ComponentChildren, TargetedEvent } from 'preact'

type TextControl = HTMLInputElement | HTMLTextAreaElement

interface Props {
  readonly id: string
  readonly label: string
  /** Lets the label be read, not seen: in a table its column's heading stands for it. */
  readonly bare?: boolean | undefined
  /** The sentence that refuses what was typed. */
  readonly why?: string | undefined
  readonly children: ComponentChildren
}

/** A label, what stands in the field, and below it the sentence that refuses it. */
export function Field({ id, label, bare, why, children }: Props) {
  return (
    <div class={bare ? 'field bare' : 'field'}>
      <label for={id} class={bare ? 'unseen' : undefined}>
        {label}
      </label>
      {children}
      {why !== undefined && (
        <p id={`${id}-why`} class="refusal" role="alert">
          {why}
        </p>
      )}
    </div>
  )
}

/**
 * What a person types stays in the field, though the figures around it change, until the plan has taken it. What the plan
 * refuses stays too, to be mended. Escape puts back what the plan holds.
 *
 * @param kept what the plan holds, as text
 * @param take hands the text to the plan; a sentence in return refuses it
 */
export function useTypedText(id: string, kept: string, take: (text: string) => string | undefined) {
  const typed = useSignal<string | null>(null)
  const why = useSignal<string | undefined>(undefined)
  const release = () => {
    if (why.value === undefined) typed.value = null
  }
  return {
    why: why.value,
    input: {
      id,
      value: typed.value ?? kept,
      'aria-invalid': why.value === undefined ? undefined : ('true' as const),
      'aria-describedby': why.value === undefined ? undefined : `${id}-why`,
      onInput: (event: TargetedEvent<TextControl>) => {
        typed.value = event.currentTarget.value
      },
      onChange: (event: TargetedEvent<TextControl>) => {
        typed.value = event.currentTarget.value
        why.value = take(event.currentTarget.value)
        release()
      },
      onBlur: release,
      onKeyDown: (event: TargetedEvent<TextControl, KeyboardEvent>) => {
        if (event.key !== 'Escape') return
        event.currentTarget.value = kept
        typed.value = null
        why.value = undefined
      },
    },
  }
}
