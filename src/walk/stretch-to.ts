import type { Stretch } from '../field/stretches'
import type { Toward } from '../report/walk-marks'

/**
 * What a stretch that ends where one stands adds to those before; null where it adds nothing. It begins where the last one ended that one has
 * passed, at the end of the line where none has.
 *
 * @param wireM of the whole line
 */
export function stretchTo(
  before: readonly Stretch[],
  hereM: number,
  toward: Toward,
  wireM: number,
): Stretch | null {
  const stretch =
    toward === 'to'
      ? { fromM: before.findLast((each) => each.fromM <= hereM)?.toM ?? 0, toM: hereM }
      : { fromM: hereM, toM: before.find((each) => each.toM >= hereM)?.fromM ?? wireM }
  return stretch.fromM < stretch.toM ? stretch : null
}
