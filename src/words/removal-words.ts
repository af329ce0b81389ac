import type { Plan } from '../plan/plan'
import { formatCount, formatList } from './units'

/** `Line A – B deleted, and with it circuit A – B, 2 telephones and 1 supply`: what an edit has taken from a plan besides what was asked for. */
export function removalSentence(
  what: string,
  before: Plan,
  after: Plan,
  asked: 'line' | 'station' | 'circuit' | 'things',
): string {
  const lines = before.lines.size - after.lines.size - (asked === 'line' ? 1 : 0)
  const circuits = [...before.circuits.values()].filter(({ id }) => !after.circuits.has(id))
  const sets = countSets(before) - countSets(after)
  const supplies = countSupplies(before) - countSupplies(after)
  const named = asked === 'circuit' ? [] : circuits.map(({ name }) => `circuit ${name}`)
  const parts = [
    ...(lines > 0 && asked !== 'things' ? [formatCount(lines, 'line')] : []),
    ...(named.length > 2 ? [formatCount(named.length, 'circuit')] : named),
    ...(sets > 0 ? [formatCount(sets, 'telephone')] : []),
    ...(supplies > 0 ? [formatCount(supplies, 'supply', 'supplies')] : []),
  ]
  return parts.length > 0
    ? `${what} deleted, and with ${asked === 'things' ? 'them' : 'it'} ${formatList(parts, parts.length)}`
    : `${what} deleted`
}

const countSets = ({ circuits }: Plan): number =>
  [...circuits.values()].reduce((sum, { sets }) => sum + sets.size, 0)

const countSupplies = ({ circuits }: Plan): number =>
  [...circuits.values()].filter(({ supply }) => supply).length
