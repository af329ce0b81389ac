import type { Watch } from '../jobs/terrain-jobs'

/** Where work under way is shown. */
export interface WorkPlace {
  value: { readonly words: string; readonly done: number; readonly stop: () => void } | null
}

/** Runs long work in sight of the person, who may stop it: then undefined comes back. */
export async function underWatch<T>(
  place: WorkPlace,
  words: string,
  run: (watch: Required<Watch>) => Promise<T>,
): Promise<T | undefined> {
  const stopper = new AbortController()
  const stop = () => stopper.abort()
  const show = (done: number) => {
    place.value = { words, done, stop }
  }
  show(0)
  try {
    return await run({ signal: stopper.signal, onProgress: show })
  } catch (error) {
    if (stopper.signal.aborted) return undefined
    throw error
  } finally {
    if (place.value?.stop === stop) place.value = null
  }
}
