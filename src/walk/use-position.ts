import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import type { Position } from '../geo/position'

/** Where the device says that it is. */
export interface Fix {
  readonly position: Position
  /** Of a hundred such fixes 95 lie within this, or as the device means it, m. */
  readonly accuracyM: number
  /** When it was there, and how high, where the device knows. */
  readonly at: Date
  readonly elevationM: number | null
}

const WHY_NOT: Readonly<Record<number, string>> = {
  1: 'The browser may not tell the position: allow it for this page, or go by the tags.',
  2: 'The device does not know where it is: go by the tags.',
  3: 'No position yet: wait under open sky, or go by the tags.',
}

/** Follows the device once it is asked to, and not before: `take` gets each fix. It ends with the screen. */
export function usePosition(take: (fix: Fix) => void) {
  const state = useSignal<'off' | 'waiting' | 'on'>('off')
  const why = useSignal('')
  const watch = useRef<number | null>(null)
  const latest = useRef(take)
  latest.current = take
  const stop = () => {
    if (watch.current !== null) navigator.geolocation.clearWatch(watch.current)
    watch.current = null
    state.value = 'off'
  }
  useEffect(() => stop, [])
  const start = () => {
    if (!('geolocation' in navigator)) {
      why.value = WHY_NOT[2]!
      return
    }
    state.value = 'waiting'
    why.value = ''
    watch.current = navigator.geolocation.watchPosition(
      ({ coords, timestamp }) => {
        state.value = 'on'
        why.value = ''
        latest.current({
          position: [coords.longitude, coords.latitude],
          accuracyM: coords.accuracy,
          at: new Date(timestamp),
          elevationM: coords.altitude,
        })
      },
      ({ code }) => {
        why.value = WHY_NOT[code] ?? WHY_NOT[2]!
        if (code === 1) stop()
      },
      { enableHighAccuracy: true, maximumAge: 5000, timeout: 30_000 },
    )
  }
  return { state: state.value, why: why.value, start, stop }
}
