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
  /** Keeps the text only when the hand pauses, for what means something else while it is half typed. */
  readonly pause?: boolean
  readonly onCommit: (text: string) => void
}

/** A line of text, or several, kept as it is typed. */
export function TextField({ label, value, bare, lines, needed, refuse, pause = false, onCommit }: Props) {
  const id = useId()
  const take = (typed: string) => {
    const text = typed.trim()
    const refusal = needed && text === '' ? `${label} must be given.` : refuse?.(text)
    if (refusal === undefined) onCommit(text)
    return refusal
  }
  const { why, input } = useTypedText(id, value, take, { pause })
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
