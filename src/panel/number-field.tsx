import { useId } from 'preact/hooks'
import type { Problem } from '../problem'
import { fieldText, type Quantity, type UnitSystem, unitOf } from '../words/units'
import { Field, useTypedText } from './field'

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
  const unit = unitOf(quantity, system)
  const take = (text: string) => {
    const read = readNumber(text, props)
    if (typeof read === 'string') return read
    if (read !== null) return props.onCommit(read)[0]?.message
    props.onClear?.()
    return undefined
  }
  const kept = value === undefined ? '' : fieldText(value, unit)
  const { why, input } = useTypedText(id, kept, take, { pause: true })
  return (
    <Field id={id} label={label} bare={bare} why={why}>
      <span class="measure">
        <input
          {...input}
          type="text"
          inputMode="decimal"
          autocomplete="off"
          placeholder={otherwise === undefined ? undefined : fieldText(otherwise, unit)}
        />
        {unit.sign && <span class="unit">{unit.sign}</span>}
      </span>
    </Field>
  )
}

/** A number that would do: 10, or the nearest to it that is allowed. */
const exampleOf = ({ min, max }: Props['limit'] & {} = { min: 10, max: 10 }): number =>
  Math.min(max, Math.max(min, 10))

/** `1,200` is twelve hundred to some and one and a fifth to others. */
const TWO_READINGS = /^[−-]?[1-9]\d{0,2},\d{3}$/

/** The number that a person typed, in SI; null for an emptied field; or the sentence that refuses it. */
function readNumber(
  text: string,
  { label, quantity, system, limit, onClear }: Props,
): number | null | string {
  const unit = unitOf(quantity, system)
  const typed = text.trim().replace('−', '-').replace(',', '.')
  if (typed === '') return onClear ? null : `${label} must be given.`
  if (TWO_READINGS.test(text.trim()))
    return `${text.trim()} can be read in two ways: write ${text.trim().replaceAll(',', '')} or ${typed}.`
  const shown = Number(typed)
  if (!Number.isFinite(shown))
    return `${label} must be a number, such as ${fieldText(exampleOf(limit), unit)}.`
  if (limit?.whole && !Number.isInteger(shown)) return `${label} must be a whole number.`
  const si = unit.toSi(shown)
  if (!limit || (si >= limit.min && si <= limit.max)) return si
  const bound = (limitSi: number) => `${fieldText(limitSi, unit)} ${unit.sign}`.trim()
  if (limit.max === Number.POSITIVE_INFINITY) return `${label} must be ${bound(limit.min)} or more.`
  return `${label} must lie between ${bound(limit.min)} and ${bound(limit.max)}.`
}
