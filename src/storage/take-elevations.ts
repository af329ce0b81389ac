/** A place for one thing that waits for the person, or is still on its way. */
export interface Waiting<T> {
  value: T | null
  subscribe(listener: (value: T | null) => void): () => void
}

/** Who reads elevation files, once the start has come so far. */
export interface ElevationStore {
  readonly groundWorker: Waiting<{ readonly add: (files: readonly File[]) => Promise<void> }>
}

/** Has elevation files read: just after the start nobody does yet, so that they wait. */
export async function takeElevations(
  { groundWorker }: ElevationStore,
  files: readonly File[],
): Promise<void> {
  await until(groundWorker, (worker) => worker !== null)
  await groundWorker.value?.add(files)
}

export const until = <T>(place: Waiting<T>, isSo: (value: T | null) => boolean): Promise<void> =>
  new Promise((done) => {
    let stop = () => {}
    let isDone = false
    stop = place.subscribe((value) => {
      if (!isSo(value)) return
      isDone = true
      stop()
      done()
    })
    // It was so at once, before there was a way to stop.
    if (isDone) stop()
  })
