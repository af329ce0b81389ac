/** When something was done, as short as it can be: the time, and the day where that was another one. */
export function momentWords(atMs: number): string {
  const at = new Date(atMs)
  const time = at.toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' })
  if (at.toDateString() === new Date().toDateString()) return time
  return `${at.toLocaleDateString([], { day: 'numeric', month: 'short' })}, ${time}`
}
