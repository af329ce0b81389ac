import { useSignal } from '@preact/signals'
import { useId } from 'preact/hooks'
import type { Problem } from '../problem'
import type { UnitSystem } from '../report/quantity-text'
import { fieldText, type Quantity, unitOf } from './format'

interface Props {
  readonly label: string
  readonly quantity: Quantity
  readonly system: UnitSystem
  /** In SI; undefined shows an empty field. */
  readonly value: number | undefined
  /** In SI. */
  readonly limit?: { readonly min: number; readonly max: number; readonly whole?: boolean }
  /** What holds while the field is empty, in SI: shown faintly. */
  readonly otherwise?: number
  /** Lets the label be read, not seen: in a table its column's heading stands for it. */
  readonly bare?: boolean
  /** Takes the number in SI. Problems in return refuse it. */
  readonly onCommit: (si: number) => readonly Problem[]
  /** Takes an emptied field; a field without this must not be left empty. */
  readonly onClear?: () => void
}

/** A number with its unit. What cannot be is refused here, with a sentence, and the plan stays as it was. */
export function NumberField(props: Props) {
  const { label, quantity, system, value, otherwise, bare } = props
  const id = useId()
  const refused = useSignal<{ readonly text: string; readonly why: string } | null>(null)
  const unit = unitOf(quantity, system)

  const commit = (field: HTMLInputElement) => {
    const read = readNumber(field.value, props)
    const why = typeof read === 'string' ? read : take(read)
    refused.value = why === undefined ? null : { text: field.value, why }
    // A number that rounds to the one before changes no signal, so the field is set by hand.
    if (why === undefined && typeof read === 'number') field.value = fieldText(read, unit)
  }
  const take = (si: number | null): string | undefined => {
    if (si !== null) return props.onCommit(si)[0]?.message
    props.onClear?.()
    return undefined
  }

  return (
    <div class={bare ? 'field bare' : 'field'}>
      <label for={id} class={bare ? 'unseen' : undefined}>
        {label}
      </label>
      <span class="measure">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autocomplete="off"
          value={refused.value?.text ?? (value === undefined ? '' : fieldText(value, unit))}
          placeholder={otherwise === undefined ? undefined : fieldText(otherwise, unit)}
          aria-invalid={refused.value ? 'true' : undefined}
          aria-describedby={refused.value ? `${id}-why` : undefined}
          onChange={(event) => commit(event.currentTarget)}
        />
        {unit.sign && <span class="unit">{unit.sign}</span>}
      </span>
      {refused.value && (
        <p id={`${id}-why`} class="refusal" role="alert">
          {refused.value.why}
        </p>
      )}
    </div>
  )
}

/** The number that a person typed, in SI; null for an emptied field; or the sentence that refuses it. */
function readNumber(
  text: string,
  { label, quantity, system, limit, onClear }: Props,
): number | null | string {
  const unit = unitOf(quantity, system)
  const typed = text.trim().replace('−', '-').replace(',', '.')
  if (typed === '') return onClear ? null : `${label} must be given.`
  const shown = Number(typed)
  if (!Number.isFinite(shown))
    return `${label} must be a number, such as ${fieldText(limit?.min || 10, unit)}.`
  if (limit?.whole && !Number.isInteger(shown)) return `${label} must be a whole number.`
  const si = unit.toSi(shown)
  if (!limit || (si >= limit.min && si <= limit.max)) return si
  const bound = (limitSi: number) => `${fieldText(limitSi, unit)} ${unit.sign}`.trim()
  if (limit.max === Number.POSITIVE_INFINITY) return `${label} must be ${bound(limit.min)} or more.`
  return `${label} must lie between ${bound(limit.min)} and ${bound(limit.max)}.`
}
