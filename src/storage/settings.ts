interface Setting<T> {
  value: T
  subscribe(listener: (value: T) => void): () => void
}

/** What a person sets once for this browser, each with the words that may be kept of it: no part of any plan. */
const KNOWN = {
  units: ['metric', 'us'],
  theme: ['system', 'light', 'dark', 'night'],
  placeForm: ['decimal', 'minutes', 'seconds', 'grid', 'utm'],
  shade: ['on', 'off'],
  contours: ['on', 'off'],
  letterKeys: ['on', 'off'],
  firstSteps: ['shown', 'away'],
} as const

export type SettingsStore = { readonly [N in keyof typeof KNOWN]: Setting<(typeof KNOWN)[N][number]> }

/** Brings back the settings last made, keeps every later change, and shows the theme on the page. */
export function keepSettings(store: SettingsStore): () => void {
  const names = Object.keys(KNOWN) as (keyof typeof KNOWN)[]
  const stops = names.map((name) => {
    const key = `fieldpair-${name}`
    const setting = store[name] as Setting<string>
    keep(key, setting, KNOWN[name])
    return setting.subscribe((value) => write(key, value))
  })
  stops.push(
    store.theme.subscribe((theme) => {
      if (theme === 'system') delete document.documentElement.dataset.theme
      else document.documentElement.dataset.theme = theme
    }),
  )
  return () => {
    for (const stop of stops) stop()
  }
}

/** All settings, by their names. */
export const settingsOf = (store: SettingsStore): Readonly<Record<string, string>> =>
  Object.fromEntries(
    (Object.keys(KNOWN) as (keyof typeof KNOWN)[]).map((name) => [
      name,
      (store[name] as Setting<string>).value,
    ]),
  )

/** Takes settings over, those that are known and no other. */
export function takeSettings(store: SettingsStore, settings: Readonly<Record<string, string>>): void {
  for (const name of Object.keys(KNOWN) as (keyof typeof KNOWN)[]) {
    const value = (KNOWN[name] as readonly string[]).find((one) => one === settings[name])
    if (value) (store[name] as Setting<string>).value = value
  }
}

function keep<T extends string>(key: string, setting: Setting<T>, known: readonly T[]): void {
  const value = known.find((one) => one === read(key))
  if (value) setting.value = value
}

/** A browser may forbid it, or have no room: then the setting lasts as long as the page. */
function read(key: string): string | null {
  try {
    return localStorage.getItem(key)
  } catch {
    return null
  }
}

function write(key: string, value: string): void {
  try {
    localStorage.setItem(key, value)
  } catch {}
}
