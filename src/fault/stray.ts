import type { Stray } from './evidence'
import type { Bench, Witness } from './observation'
import type { FaultKind } from './trouble'

/**
 * How likely another circuit's bell or speech comes through, by what joins the two. Allowances; that a third party is heard is the sign
 * of a cross: US Army subcourse SS0440, p. 2-12.
 */
const COMES_THROUGH: Readonly<Record<'rings' | 'heard', Partial<Record<FaultKind, number>>>> = {
  rings: { crossed: 0.4, swapped: 0.95, split: 0.05 },
  heard: { crossed: 0.9, swapped: 0.95, split: 0.85 },
}
/** Without any of that: wires that lie side by side hum of each other. */
const BY_ITSELF = { rings: 0.003, heard: 0.03 } as const
/** No other circuit lies there. */
const LN_NOWHERE = -30

/** What of another circuit comes through, or that nothing does. */
export function strayWitness({ beside }: Bench, { stray, circuit }: Stray): Witness {
  const lines =
    circuit === undefined ? new Set([...beside.values()].flatMap((each) => [...each])) : beside.get(circuit)
  const chanceOf = (kind: FaultKind): number =>
    stray === 'none'
      ? 1 - (COMES_THROUGH.heard[kind] ?? BY_ITSELF.heard)
      : (COMES_THROUGH[stray][kind] ?? BY_ITSELF[stray])
  return {
    sound: () => Math.log(stray === 'none' ? 1 - BY_ITSELF.heard : BY_ITSELF[stray]),
    at: (line) => {
      // Nothing is known of any other circuit: it may lie anywhere.
      const isThere = beside.size === 0 || lines?.has(line)
      return ({ kind }) => (kind in COMES_THROUGH.heard && !isThere ? LN_NOWHERE : Math.log(chanceOf(kind)))
    },
  }
}
