import type { Watch } from '../jobs/terrain-jobs'

/** Where work under way is shown. */
export interface WorkPlace {
  value: { readonly words: string; readonly done: number; readonly stop: () => void } | null
}

/** Runs long work in sight of the person, who may stop it, as may whoever holds `gone`: then undefined comes back, whatever was found. */
export async function underWatch<T>(
  place: WorkPlace,
  words: string,
  run: (watch: Required<Pick<Watch, 'signal' | 'onProgress'>>) => Promise<T | undefined>,
  gone?: AbortSignal,
): Promise<T | undefined> {
  const stopper = new AbortController()
  const stop = () => stopper.abort()
  const signal = gone ? AbortSignal.any([stopper.signal, gone]) : stopper.signal
  const show = (done: number) => {
    if (!signal.aborted) place.value = { words, done, stop }
  }
  const hide = () => {
    if (place.value?.stop === stop) place.value = null
  }
  show(0)
  signal.addEventListener('abort', hide)
  try {
    const found = await run({ signal, onProgress: show })
    return signal.aborted ? undefined : found
  } catch (error) {
    if (signal.aborted) return undefined
    throw error
  } finally {
    hide()
  }
}
