/** What a person sets once for this browser: no part of any plan. */
export interface SettingsStore {
  readonly units: Setting<'metric' | 'us'>
  readonly theme: Setting<'system' | 'light' | 'dark'>
  readonly shade: Setting<'on' | 'off'>
  readonly contours: Setting<'on' | 'off'>
}

interface Setting<T> {
  value: T
  subscribe(listener: (value: T) => void): () => void
}

/** Brings back the settings last made, keeps every later change, and shows the theme on the page. */
export function keepSettings(store: SettingsStore): () => void {
  keep('fieldpair-units', store.units, ['metric', 'us'])
  keep('fieldpair-theme', store.theme, ['system', 'light', 'dark'])
  keep('fieldpair-shade', store.shade, ['on', 'off'])
  keep('fieldpair-contours', store.contours, ['on', 'off'])
  const stops = [
    store.shade.subscribe((shade) => write('fieldpair-shade', shade)),
    store.contours.subscribe((contours) => write('fieldpair-contours', contours)),
    store.units.subscribe((units) => write('fieldpair-units', units)),
    store.theme.subscribe((theme) => {
      write('fieldpair-theme', theme)
      if (theme === 'system') delete document.documentElement.dataset.theme
      else document.documentElement.dataset.theme = theme
    }),
  ]
  return () => {
    for (const stop of stops) stop()
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
