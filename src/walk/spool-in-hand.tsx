import { useSignal } from '@preact/signals'
import { isolated } from '../isolated'
import { SelectField } from '../panel/select-field'
import { TextField } from '../panel/text-field'
import type { Store } from '../state/store'
import type { WalkLine } from './walk-line'

/** The spool that wire is laid from just now. */
export interface SpoolInHand {
  /** As a person said; empty where wire is laid as planned, and a record names none. */
  readonly chosen: string
  /** As planned for the wire behind one, where one stands. */
  readonly planned: string
  /** Takes the next one as planned. */
  readonly next: () => void
  readonly choose: (spool: string) => void
}

/** A piece that ends so near behind one is the one that was laid last, m. */
const JUST_M = 0.5

/** @param wireM wire from the line's `from` to where one stands, m */
export function useSpoolInHand({ measured, toward }: WalkLine, wireM: number): SpoolInHand {
  const chosen = useSignal('')
  const ofPair = measured.pieces.filter(({ pair }) => pair === 0)
  const inOrder = toward === 'to' ? ofPair : ofPair.toReversed()
  const goneM = toward === 'to' ? wireM : measured.wireM - wireM
  let runM = 0
  const at = inOrder.findIndex((piece) => {
    runM += piece.wireM
    return runM >= goneM - JUST_M
  })
  const planned = inOrder[at]?.spool ?? ''
  return {
    chosen: chosen.value,
    planned,
    next: () => {
      const used = chosen.value || planned
      chosen.value = inOrder.slice(Math.max(0, at)).find(({ spool }) => spool !== used)?.spool ?? ''
    },
    choose: (spool) => {
      chosen.value = spool
    },
  }
}

const OTHER = '\nother'

/** Which spool wire is laid from: those of the plan, or another by the name on it. */
export function SpoolField({ store, walked, spool }: { store: Store; walked: WalkLine; spool: SpoolInHand }) {
  const isOther = useSignal(false)
  const { spools } = store.report.value
  const known = spools.flatMap(({ wire, used }) =>
    wire === walked.line.wire ? used.map((each) => each.spool) : [],
  )
  const names = spool.chosen && !known.includes(spool.chosen) ? [...known, spool.chosen] : known
  return (
    <>
      <SelectField
        label="Laying from"
        value={isOther.value ? OTHER : spool.chosen}
        options={[
          { value: '', text: spool.planned ? `as planned: ${spool.planned}` : 'as planned' },
          ...names.map((name) => ({ value: name, text: `spool ${isolated(name)}` })),
          { value: OTHER, text: 'another spool…' },
        ]}
        onCommit={(value) => {
          isOther.value = value === OTHER
          if (value !== OTHER) spool.choose(value)
        }}
      />
      {isOther.value && (
        <TextField
          label="What stands on it"
          value=""
          onCommit={(name) => {
            isOther.value = false
            spool.choose(name.trim())
          }}
        />
      )}
    </>
  )
}
