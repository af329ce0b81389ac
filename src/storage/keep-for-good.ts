const ASKED_KEY = 'fieldpair-asked-to-keep'

/** Asks the browser, once, not to clear what is kept here when the disk runs short. Some browsers ask the person then. */
export async function askToKeepForGood(): Promise<void> {
  try {
    if (localStorage.getItem(ASKED_KEY) || (await isKeptForGood())) return
    localStorage.setItem(ASKED_KEY, 'yes')
    await navigator.storage?.persist?.()
  } catch {
    // A browser that refuses the question keeps as long as it likes: the list of plans says so.
  }
}

/** Whether the browser has promised not to clear what is kept here by itself. */
export const isKeptForGood = async (): Promise<boolean> =>
  (await navigator.storage?.persisted?.().catch(() => false)) ?? false
