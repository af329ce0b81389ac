import type { StandingRecord } from '../plan/standing-records'

/** A stretch of wire, m from its line's `from`. */
export interface Stretch {
  readonly fromM: number
  readonly toM: number
}

/** What lies, what was tested of it, and what was taken up again, as stretches that do not meet. */
export interface Done {
  readonly laid: readonly Stretch[]
  readonly tested: readonly Stretch[]
  readonly recovered: readonly Stretch[]
}

const NOTHING_DONE: Done = { laid: [], tested: [], recovered: [] }

export const lengthM = (stretches: readonly Stretch[]): number =>
  stretches.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0)

function joined(stretches: readonly Stretch[], more: Stretch): readonly Stretch[] {
  if (more.toM <= more.fromM) return stretches
  const apart = stretches.filter(({ fromM, toM }) => toM < more.fromM || fromM > more.toM)
  const touching = stretches.filter((each) => !apart.includes(each))
  const fromM = Math.min(more.fromM, ...touching.map((each) => each.fromM))
  const toM = Math.max(more.toM, ...touching.map((each) => each.toM))
  return [...apart, { fromM, toM }].sort((a, b) => a.fromM - b.fromM)
}

export const without = (stretches: readonly Stretch[], gone: Stretch): readonly Stretch[] =>
  stretches
    .flatMap(({ fromM, toM }) => [
      { fromM, toM: Math.min(toM, gone.fromM) },
      { fromM: Math.max(fromM, gone.toM), toM },
    ])
    .filter(({ fromM, toM }) => toM > fromM)

/**
 * What was done on one line, from its records in their order: what is laid lies there until it is recovered, what was tested is tested
 * until then, and what is laid anew is recovered no more.
 */
export function doneOn(records: readonly StandingRecord[]): Done {
  let { laid, tested, recovered } = NOTHING_DONE
  for (const record of records) {
    switch (record.kind) {
      case 'laid':
        laid = joined(laid, record)
        recovered = without(recovered, record)
        break
      case 'tested':
        tested = joined(tested, record)
        break
      case 'recovered':
        laid = without(laid, record)
        tested = without(tested, record)
        recovered = joined(recovered, record)
    }
  }
  return { laid, tested, recovered }
}
