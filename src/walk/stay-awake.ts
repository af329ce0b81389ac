import { useEffect } from 'preact/hooks'

/** Keeps the screen from going dark as long as this is shown, where the browser can. */
export function useAwakeScreen(): void {
  useEffect(() => {
    let held: WakeLockSentinel | null = null
    let isOver = false
    // A page that was out of sight has lost its hold on the screen.
    const ask = async () => {
      if (document.visibilityState !== 'visible' || !('wakeLock' in navigator)) return
      try {
        const lock = await navigator.wakeLock.request('screen')
        if (isOver) void lock.release()
        else held = lock
      } catch {
        // A battery that is nearly empty: the walk goes on without.
      }
    }
    void ask()
    document.addEventListener('visibilitychange', ask)
    return () => {
      isOver = true
      document.removeEventListener('visibilitychange', ask)
      void held?.release()
    }
  }, [])
}
