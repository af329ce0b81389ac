import { computed, type ReadonlySignal } from '@preact/signals'
import { whyOf } from '../jobs/protocol'

/** A value that may be from before the last change, and why it is. */
export interface LastGood<T> {
  readonly value: ReadonlySignal<T>
  /** Why the value of now could not be reckoned; empty where it could. */
  readonly failure: ReadonlySignal<string>
}

/**
 * What `reckon` gives; where it throws, what stands in for that.
 *
 * @param standIn is handed the last good value, undefined where there is none
 */
export function keepLastGood<T>(reckon: () => T, standIn: (last: T | undefined) => T): LastGood<T> {
  let last: T | undefined
  const attempt = computed(() => {
    try {
      last = reckon()
      return { value: last, failure: '' }
    } catch (error) {
      console.error(error)
      return { value: standIn(last), failure: whyOf(error) }
    }
  })
  return { value: computed(() => attempt.value.value), failure: computed(() => attempt.value.failure) }
}

/** Why figures are not those of the plan as it is now; empty where they are. */
export function staleSentence(why: string, areOld: boolean): string {
  if (!why) return ''
  const figures = areOld
    ? `These figures are from before your last change: they could not be worked out again (${why}).`
    : `The figures of this plan could not be worked out (${why}).`
  return `${figures} Undo the change, or save the plan as a file.`
}
