import { useId } from 'preact/hooks'
import { Field, useTypedText } from './field'

interface Props {
  readonly label: string
  readonly value: string
  /** Lets the label be read, not seen. */
  readonly bare?: boolean
  /** Room for so many lines; one line where absent. */
  readonly lines?: number
  /** Text that must not be left empty. */
  readonly needed?: boolean
  /** The sentence that refuses a text, if it cannot be. */
  readonly refuse?: (text: string) => string | undefined
  readonly onCommit: (text: string) => void
}

/** A line of text, or several, kept as it is typed. */
export function TextField({ label, value, bare, lines, needed, refuse, onCommit }: Props) {
  const id = useId()
  const { why, input } = useTypedText(id, value, (typed) => {
    const text = typed.trim()
    const refusal = needed && text === '' ? `${label} must be given.` : refuse?.(text)
    if (refusal === undefined) onCommit(text)
    return refusal
  })
  return (
    <Field id={id} label={label} bare={bare} why={why}>
      {lines ? (
        <textarea {...input} rows={lines} dir="auto" />
      ) : (
        <input {...input} type="text" autocomplete="off" dir="auto" />
      )}
    </Field>
  )
}
