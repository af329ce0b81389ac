import { useSignal } from '@preact/signals'
import { useId } from 'preact/hooks'

interface Props {
  readonly label: string
  readonly value: string
  /** Lets the label be read, not seen. */
  readonly bare?: boolean
  /** Text that must not be left empty. */
  readonly needed?: boolean
  readonly onCommit: (text: string) => void
}

/** A line of text that is kept when the hand leaves it. */
export function TextField({ label, value, bare, needed, onCommit }: Props) {
  const id = useId()
  const refused = useSignal(false)

  const commit = (text: string) => {
    refused.value = needed === true && text.trim() === ''
    if (!refused.value) onCommit(text.trim())
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
        value={refused.value ? '' : value}
        aria-invalid={refused.value ? 'true' : undefined}
        aria-describedby={refused.value ? `${id}-why` : undefined}
        onChange={(event) => commit(event.currentTarget.value)}
      />
      {refused.value && (
        <p id={`${id}-why`} class="refusal" role="alert">
          {label} must be given.
        </p>
      )}
    </div>
  )
}
