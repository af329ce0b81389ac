/** What is told of the release, as the store holds it. */
export interface ReleaseSink {
  value: {
    readonly name: string
    readonly offline: 'coming' | 'ready' | 'not whole' | 'plain http' | 'not offered' | 'one file'
    readonly isNewerReady: boolean
  }
}

/** A page that stays open for days looks for a newer release so often. */
const LOOK_MS = 60 * 60 * 1000

/** Has the browser keep the whole release for use without a network (public/sw.js), and tells how far that is. */
export async function keepRelease(sink: ReleaseSink): Promise<void> {
  const tell = (change: Partial<ReleaseSink['value']>) => {
    sink.value = { ...sink.value, ...change }
  }
  tell({ name: document.querySelector<HTMLMetaElement>('meta[name="release"]')?.content ?? '' })
  // Only the one-file program opens from a disk.
  if (location.protocol === 'file:') return tell({ offline: 'one file' })
  if (!isSecureContext) return tell({ offline: 'plain http' })
  const workers = navigator.serviceWorker
  if (!workers) return tell({ offline: 'not offered' })

  const look = (registration: ServiceWorkerRegistration) => {
    const { active, installing, waiting } = registration
    if (active) tell({ offline: 'ready', isNewerReady: waiting !== null })
    else tell({ offline: installing || waiting ? 'coming' : 'not whole' })
  }
  const follow = (registration: ServiceWorkerRegistration) => {
    registration.installing?.addEventListener('statechange', () => look(registration))
    look(registration)
  }
  try {
    // Neither the worker nor its list of files out of the browser's other cache.
    const registration = await workers.register('./sw.js', { updateViaCache: 'none' })
    follow(registration)
    registration.addEventListener('updatefound', () => follow(registration))
    setInterval(() => void registration.update().catch(() => undefined), LOOK_MS)
  } catch {
    const kept = await workers.getRegistration().catch(() => undefined)
    if (kept?.active) look(kept)
    else tell({ offline: 'not offered' })
  }
}

/**
 * Opens the newer release that waits, where no other window of the program is open: the worker refuses else, and nothing
 * happens.
 */
export async function openNewerRelease(): Promise<void> {
  const registration = await navigator.serviceWorker.getRegistration()
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload())
  registration?.waiting?.postMessage('take over')
}

/** Looks through every kept file of the release, brings those anew that are not as they were built, and opens the page again. */
export const mendRelease = (): void => {
  // From public/start.js, which is there even where this program is not.
  const { mendProgram } = window as { mendProgram?: () => void }
  if (mendProgram) mendProgram()
  else location.reload()
}
