import type { SuggestedNet } from '../route/suggest-nets'
import type { Tongue } from './tongue'

type Apart = NonNullable<SuggestedNet['apart']>

/** What a ring is worth against a break: that its lines keep apart, or which stretches two of them share. */
export function ringApartSentences({ apartM, close }: Apart, { length, name }: Tongue): string[] {
  if (close.length === 0)
    return [
      `Its lines keep ${length(apartM)} apart but where they meet at a station: a break in one place cuts nobody off.`,
    ]
  return close.map(({ lines: [a, b], lengthM }) => {
    const pair = `${name(a.from)} to ${name(a.to)} and ${name(b.from)} to ${name(b.to)}`
    const shared =
      lengthM < 1
        ? 'cross each other'
        : `lie within ${length(apartM)} of each other for ${length(Math.max(1, lengthM))}`
    return `${pair} ${shared}, at the ring on the map: one break there can cut both.`
  })
}
