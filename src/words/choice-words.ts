import type { Choice } from '../budget/choices'
import { checkWords } from './check-words'
import { type UnitSystem, unitOf } from './units'

type NameOf = (stationId: string) => string

/** First what can do its work, then what rings, then what reaches farther. */
export const betterChoice = (a: Choice, b: Choice): number =>
  Number(b.complete) - Number(a.complete) ||
  Number(b.rings) - Number(a.rings) ||
  b.worst.factor - a.worst.factor ||
  b.today.factor - a.today.factor

/** What ends the reach at worst, after what this choice lacks and others have. */
export function limitWords(
  { complete, rings, worst }: Choice,
  list: readonly Choice[],
  nameOf: NameOf,
): string {
  const lacks = [
    ...(!complete && list.some((other) => other.complete) ? ['not complete with it'] : []),
    ...(!rings && list.some((other) => other.rings) ? ['rings nothing'] : []),
  ]
  return [...lacks, ...(worst.check ? [checkWords(worst.check, nameOf)] : [])].join('; ')
}

/** How far a choice reaches, where the longest way is `longestM` now, in three figures: a reach is known to 0.1 %, and nobody lays wire to the metre by it. */
export function reachWords({ factor, check }: Choice['today'], longestM: number, system: UnitSystem): string {
  if (!check) return 'no end found'
  if (factor === 0) return 'nowhere'
  const { fromSi, sign } = unitOf('lengthKm', system)
  return `${Number(fromSi(factor * longestM).toPrecision(3))} ${sign}`
}
