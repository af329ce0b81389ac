import { isObject } from '../schema/schema'

const BOX = '/share/box.json'

/** What the box that served this page says of itself; null where none did, or it is not reached. */
export async function askBox(): Promise<{ readonly isFull: boolean; readonly hasBase: boolean } | null> {
  if (!/^https?:$/.test(location.protocol)) return null
  try {
    const answer = await fetch(new URL(BOX, location.href), { cache: 'no-store' })
    const told: unknown = answer.ok ? await answer.json() : null
    return isObject(told) && told.box === 1
      ? { isFull: told.isFull === true, hasBase: told.hasBase === true }
      : null
  } catch {
    return null
  }
}
