import type { Circuit, Plan } from '../plan/plan'
import { applyChange, type Change, supplyCellVolts } from '../report/remedy-changes'
import type { Tongue } from './tongue'
import { formatCount, formatList } from './units'

type Kind = Change['kind']
type ChangeOf<K extends Kind> = Extract<Change, { readonly kind: K }>

/** What a change is made to. */
interface Made {
  readonly plan: Plan
  readonly circuit: Circuit
}

const SAY: { readonly [K in Kind]: (change: ChangeOf<K>, say: Tongue, made: Made) => string } = {
  wire: ({ line, wire }, { name }) => `${name(wire)} on ${name(line)}`,
  'second-pair': ({ line }, { name }) => `A second pair beside ${name(line)}, joined to it at both ends`,
  'pair-for-earth': ({ line }, { name }) => `A pair in place of the earth return on ${name(line)}`,
  'more-rods': ({ line, rods }, { name }) => `${rods} rods in place of one at each end of ${name(line)}`,
  'move-supply': ({ at }, { name }) => `The supply moved to ${name(at)}`,
  supply: ({ type, at }, { name }, { circuit }) =>
    circuit.supply ? `${name(type)} as the supply` : `${name(type)} at ${name(at)}`,
  board: ({ type, at }, { name }, { circuit }) =>
    circuit.supply
      ? `${name(type)} in its place`
      : `${name(type)} at ${name(at)} in place of the party line, a line to each port`,
  'more-cells': ({ cells }, _, { plan, circuit }) => {
    const volts = supplyCellVolts(plan, circuit)
    const cell = volts === undefined ? 'cell' : `${volts} V cell`
    return cells === 1 ? `One more ${cell} in series` : `${formatCount(cells, `more ${cell}`)} in series`
  },
  sets: (change, { name }, { plan, circuit }) => {
    const freed = circuit.supply && !applyChange(plan, circuit.id, change).circuits.get(circuit.id)?.supply
    return `${name(change.to)} in place of ${name(change.from)}${freed ? ', and no supply' : ''}`
  },
  split: ({ at }, { name }) =>
    `Split at ${name(at)} into circuits of their own, with a set on each to pass calls on`,
}

/** The same done to several lines, once. */
function onSeveralLines(changes: readonly Change[], { name }: Tongue): string | undefined {
  const [first] = changes
  if (changes.length < 2 || (first?.kind !== 'wire' && first?.kind !== 'second-pair')) return undefined
  const { line: _, ...same } = first
  const lines = changes.flatMap((change) => {
    if (change.kind !== 'wire' && change.kind !== 'second-pair') return []
    const { line, ...own } = change
    return JSON.stringify(own) === JSON.stringify(same) ? [name(line)] : []
  })
  if (lines.length < changes.length) return undefined
  const named = formatList(lines, lines.length)
  return first.kind === 'wire'
    ? `${name(first.wire)} on ${named}`
    : `A second pair beside each of ${named}, joined to it at both ends`
}

/** What a remedy changes on a circuit, for a crew. */
export const remedyWords = (changes: readonly Change[], plan: Plan, circuit: Circuit, say: Tongue): string =>
  onSeveralLines(changes, say) ??
  changes
    .map((change) =>
      (SAY[change.kind] as (change: Change, say: Tongue, made: Made) => string)(change, say, {
        plan,
        circuit,
      }),
    )
    .join('; ')
