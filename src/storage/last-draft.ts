const LAST_KEY = 'fieldpair-draft'

/** Which draft this window had open, so that a reload finds it again; the newest one elsewhere. */
export function lastKey(): string | null {
  try {
    return sessionStorage.getItem(LAST_KEY)
  } catch {
    return null
  }
}

export function rememberLast(key: string): void {
  try {
    sessionStorage.setItem(LAST_KEY, key)
  } catch {
    // Without it a reload opens the newest draft: nothing is lost.
  }
}
