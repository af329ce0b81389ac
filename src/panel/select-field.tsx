import { useId } from 'preact/hooks'
import { Field } from './field'

interface Props<T extends string> {
  readonly label: string
  readonly value: T
  readonly options: readonly { readonly value: T; readonly text: string }[]
  /** Lets the label be read, not seen. */
  readonly bare?: boolean
  readonly onCommit: (value: T) => void
}

/** One choice of several. */
export function SelectField<T extends string>({ label, value, options, bare, onCommit }: Props<T>) {
  const id = useId()
  return (
    <Field id={id} label={label} bare={bare}>
      <select id={id} value={value} onChange={(event) => onCommit(event.currentTarget.value as T)}>
        {options.map((option) => (
          <option key={option.value} value={option.value} selected={option.value === value}>
            {option.text}
          </option>
        ))}
      </select>
    </Field>
  )
}
