import { useSignal } from '@preact/signals'
import { useId } from 'preact/hooks'

interface Props {
  readonly label: string
  readonly value: string
  /** Lets the label be read, not seen. */
  readonly bare?: boolean
  /** Text that must not be left empty. */
  readonly needed?: boolean
  /** The sentence that refuses a text, if it cannot be. */
  readonly refuse?: (text: string) => string | undefined
  readonly onCommit: (text: string) => void
}

/** A line of text that is kept when the hand leaves it. */
export function TextField({ label, value, bare, needed, refuse, onCommit }: Props) {
  const id = useId()
  const refused = useSignal<{ readonly text: string; readonly why: string } | null>(null)

  const commit = (typed: string) => {
    const text = typed.trim()
    const why = needed && text === '' ? `${label} must be given.` : refuse?.(text)
    refused.value = why === undefined ? null : { text: typed, why }
    if (why === undefined) onCommit(text)
  }

  return (
    <div class={bare ? 'field bare' : 'field'}>
      <label for={id} class={bare ? 'unseen' : undefined}>
        {label}
      </label>
      <input
        id={id}
        type="text"
        autocomplete="off"
        value={refused.value?.text ?? value}
        aria-invalid={refused.value ? 'true' : undefined}
        aria-describedby={refused.value ? `${id}-why` : undefined}
        onChange={(event) => commit(event.currentTarget.value)}
      />
      {refused.value && (
        <p id={`${id}-why`} class="refusal" role="alert">
          {refused.value.why}
        </p>
      )}
    </div>
  )
}
