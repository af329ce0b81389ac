/** Header that names the copies of a plan that a message has passed through, so that it comes back to none. */
export const VIA = 'Via'
/** A message that claims to have been in more places comes from nobody's box. */
const MOST = 16

/**
 * Where a message of this copy has been, this copy too. Empty where that cannot be: such a message stays.
 *
 * @param {import('@nats-io/nats-core').MsgHdrs | undefined} headers
 * @param {string} here
 * @returns {readonly string[]}
 */
export function passedThrough(headers, here) {
  const before = headers?.get(VIA) || ''
  const path = before === '' ? [] : before.split(' ')
  return path.length < MOST ? [...path, here] : []
}
