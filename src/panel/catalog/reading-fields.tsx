import type { Signal } from '@preact/signals'
import type { Problem, Result } from '../../problem'
import type { Store } from '../../state/store'
import type { Quantity } from '../../words/units'
import { NumberField } from '../number-field'

/** A figure of a form that is no part of a plan before its button is pressed. */
export function FormFigure(props: {
  readonly store: Store
  readonly label: string
  readonly quantity: Quantity
  readonly of: Signal<number> | Signal<number | undefined>
  /** It may be left empty. */
  readonly optional?: boolean
}) {
  const { of } = props
  return (
    <NumberField
      label={props.label}
      quantity={props.quantity}
      system={props.store.units.value}
      value={of.value}
      onCommit={(given) => {
        of.value = given
        return []
      }}
      {...(props.optional && {
        onClear: () => {
          ;(of as Signal<number | undefined>).value = undefined
        },
      })}
    />
  )
}

export const Refusal = ({ words }: { words: string }) =>
  words ? (
    <p class="refusal" role="alert">
      {words}
    </p>
  ) : null

/** Hands on what was made; why it could not be, in a sentence; empty where it could. */
export function refusalOf<T>(made: Result<T>, onPut: (value: T) => readonly Problem[]): string {
  const problems = made.ok ? onPut(made.value) : made.problems
  return problems[0]?.message ?? ''
}
