/** The least and the most of some numbers, however many they are; ∞ and −∞ of none. */
export function spanOf(values: Iterable<number>): readonly [least: number, most: number] {
  let least = Number.POSITIVE_INFINITY
  let most = Number.NEGATIVE_INFINITY
  for (const value of values) {
    if (value < least) least = value
    if (value > most) most = value
  }
  return [least, most]
}
