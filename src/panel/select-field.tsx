import type { Signal } from '@preact/signals'
import { useId } from 'preact/hooks'
import { Field } from './field'

interface Option<T extends string> {
  readonly value: T
  readonly text: string
  /** Shown, with its reason in the text, but not to be chosen. */
  readonly isBarred?: boolean
}

/** Options under a heading. */
interface OptionGroup<T extends string> {
  readonly heading: string
  readonly options: readonly Option<T>[]
}

interface Props<T extends string> {
  readonly label: string
  readonly value: T
  readonly options: readonly (Option<T> | OptionGroup<T>)[]
  /** Lets the label be read, not seen. */
  readonly bare?: boolean
  readonly onCommit: (value: T) => void
}

/** One choice of several. */
export function SelectField<T extends string>({ label, value, options, bare, onCommit }: Props<T>) {
  const id = useId()
  const shown = (option: Option<T>) => (
    <option
      key={option.value}
      value={option.value}
      selected={option.value === value}
      disabled={option.isBarred && option.value !== value}
    >
      {option.text}
    </option>
  )
  return (
    <Field id={id} label={label} bare={bare}>
      <select id={id} value={value} onChange={(event) => onCommit(event.currentTarget.value as T)}>
        {options.map((each) =>
          'heading' in each ? (
            <optgroup key={each.heading} label={each.heading}>
              {each.options.map(shown)}
            </optgroup>
          ) : (
            shown(each)
          ),
        )}
      </select>
    </Field>
  )
}

/** One choice of several that a form holds. */
export function SelectFieldOf<T extends string>({
  of,
  ...shown
}: Omit<Props<T>, 'value' | 'onCommit'> & { readonly of: Signal<T> }) {
  return (
    <SelectField
      {...shown}
      value={of.value}
      onCommit={(value) => {
        of.value = value
      }}
    />
  )
}
