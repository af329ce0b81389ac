import type { Wire } from '../../catalog/wire'
import type { Problem } from '../../problem'
import type { Store } from '../../state/store'
import { fieldText, type Unit, unitOf } from '../../words/units'
import { TextField } from '../text-field'

interface Props {
  readonly store: Store
  readonly wire: Wire
  readonly onPut: (wire: Wire) => readonly Problem[]
}

/** The lengths in which a wire is made up, apart by semicolons. */
export function SpoolsField({ store, wire, onPut }: Props) {
  const unit = unitOf('lengthM', store.units.value)
  return (
    <TextField
      label={`Spools, ${unit.sign}`}
      value={wire.spoolsM.map((lengthM) => fieldText(lengthM, unit)).join('; ')}
      refuse={(text) =>
        readLengthsM(text, unit)
          ? undefined
          : `Give one or more lengths in ${unit.sign}, apart by semicolons, such as 400; 1600.`
      }
      onCommit={(text) => onPut({ ...wire, spoolsM: readLengthsM(text, unit) ?? wire.spoolsM })}
    />
  )
}

/** Lengths above nothing, in m; undefined where the text holds anything else, or none. */
function readLengthsM(text: string, unit: Unit): readonly number[] | undefined {
  const parts = text.split(/[;\s]+/).filter((part) => part !== '')
  const lengthsM = parts.map((part) => unit.toSi(Number(part.replace(',', '.'))))
  return lengthsM.length > 0 && lengthsM.every((lengthM) => lengthM > 0 && lengthM < Infinity)
    ? lengthsM
    : undefined
}
