import { signal } from '@preact/signals'
import type { ComponentType } from 'preact'
import { useEffect } from 'preact/hooks'

/** A component whose script is fetched when it is first shown, so that the first screen need not wait for it. */
export function loadWhenShown<P extends object>(load: () => Promise<ComponentType<P>>): ComponentType<P> {
  const loaded = signal<ComponentType<P> | null>(null)
  return function LoadedWhenShown(props: P) {
    useEffect(() => {
      void load().then((component) => {
        loaded.value = component
      })
    }, [])
    const Loaded = loaded.value
    return Loaded && <Loaded {...props} />
  }
}
