import { tellLeaving } from './keeper'

/** Keeps what there is when the page is hidden or goes away, and has the browser ask before that where something would be lost. Gives back the way to leave off. */
export function whenPageGoes(keep: () => void, isAtRisk: () => boolean): () => void {
  const onGone = () => {
    tellLeaving()
    keep()
  }
  const onHide = () => {
    if (document.visibilityState === 'hidden') keep()
  }
  const onLeave = (event: BeforeUnloadEvent) => {
    tellLeaving()
    if (isAtRisk()) event.preventDefault()
  }
  addEventListener('pagehide', onGone)
  addEventListener('beforeunload', onLeave)
  document.addEventListener('visibilitychange', onHide)
  return () => {
    removeEventListener('pagehide', onGone)
    removeEventListener('beforeunload', onLeave)
    document.removeEventListener('visibilitychange', onHide)
  }
}
