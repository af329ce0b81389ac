import { afterAll, vi } from 'vitest'
import { RENEW_PAGE } from './page-environment'

// Modules that hold what changes are read anew for each file, in a process that stays: a new one takes half a second.
vi.resetModules()
await (globalThis as { [RENEW_PAGE]?: () => Promise<void> })[RENEW_PAGE]?.()
const before = new Set(Reflect.ownKeys(globalThis))

afterAll(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
  for (const name of Reflect.ownKeys(globalThis))
    if (!before.has(name)) Reflect.deleteProperty(globalThis, name)
})
