import { formatCount } from './units'

/** How long ago something was, as people say it: `now`, `4 minutes ago`. */
export function ageWords(ageMs: number): string {
  const minutes = Math.floor(ageMs / 60_000)
  if (minutes < 1) return 'now'
  if (minutes < 120) return `${formatCount(minutes, 'minute')} ago`
  return `${formatCount(Math.floor(minutes / 60), 'hour')} ago`
}
