import { useSignal } from '@preact/signals'
import { useId } from 'preact/hooks'
import type { UnitSystem } from '../report/quantity-text'
import { fieldText, type Quantity, unitOf } from './format'

interface Props {
  readonly label: string
  readonly quantity: Quantity
  readonly system: UnitSystem
  /** In SI; undefined shows an empty field. */
  readonly value: number | undefined
  /** In SI, both inclusive. */
  readonly min?: number
  readonly max?: number
  /** Only whole numbers. */
  readonly whole?: boolean
  /** What holds while the field is empty, in SI; a field with none must not be left empty. */
  readonly otherwise?: number
  /** Lets the label be read, not seen: in a table its column's heading stands for it. */
  readonly bare?: boolean
  /** Takes the number in SI. A sentence in return refuses it. */
  readonly onCommit: (si: number | undefined) => string | undefined
}

/** A number with its unit. What cannot be is refused here, with a sentence, and the plan stays as it was. */
export function NumberField(props: Props) {
  const { label, quantity, system, value, otherwise, bare } = props
  const id = useId()
  const refused = useSignal<{ readonly text: string; readonly why: string } | null>(null)
  const unit = unitOf(quantity, system)

  const commit = (field: HTMLInputElement) => {
    const read = readNumber(field.value, props)
    const why = typeof read === 'string' ? read : props.onCommit(read.si)
    refused.value = why === undefined ? null : { text: field.value, why }
    // A number that rounds to the one before changes no signal, so the field is set by hand.
    if (why === undefined && read instanceof Object && read.si !== undefined)
      field.value = fieldText(read.si, unit)
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

/** The number that a person typed, in SI, or the sentence that refuses it. */
function readNumber(
  text: string,
  { label, quantity, system, min = -Infinity, max = Infinity, whole, otherwise }: Props,
): { readonly si: number | undefined } | string {
  const unit = unitOf(quantity, system)
  const typed = text.trim().replace('−', '-').replace(',', '.')
  if (typed === '') return otherwise === undefined ? `${label} must be given.` : { si: undefined }
  const shown = Number(typed)
  if (!Number.isFinite(shown))
    return `${label} must be a number, such as ${fieldText(otherwise ?? midOf(min, max), unit)}.`
  if (whole && !Number.isInteger(shown)) return `${label} must be a whole number.`
  const si = unit.toSi(shown)
  if (si >= min && si <= max) return { si }
  const bound = (limit: number) =>
    `${fieldText(limit, unit)}${unit.sign === '°' || !unit.sign ? '' : ' '}${unit.sign}`
  if (max === Infinity) return `${label} must be ${bound(min)} or more.`
  if (min === -Infinity) return `${label} must be ${bound(max)} or less.`
  return `${label} must lie between ${bound(min)} and ${bound(max)}.`
}

const midOf = (min: number, max: number) => (Number.isFinite(min + max) ? (min + max) / 2 : Math.max(min, 1))
