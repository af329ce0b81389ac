import { AckPolicy, DeliverPolicy } from '@nats-io/jetstream'
import { headers } from '@nats-io/nats-core'
import { digestOf, hasStill } from './copy-of-plan.mjs'
import { passedThrough, VIA } from './passed-through.mjs'

/** So much is on its way at once: more would keep a slow link from telling that it lives, bytes. */
const AT_ONCE = 32 * 1024
/** The slowest link that is one, bytes a millisecond. */
export const LEAST_PACE = 1
const ACK_MS = 30_000
/** A message that is larger is not looked at again to know a stream by, bytes. */
const SMALL = 4096
/** A copy with no more room is tried again after so long, ms. */
const FULL_MS = 30_000
/** nats-server's own bound, which its headers count in, bytes. */
const MOST_MESSAGE = 8 * 1024 * 1024

/**
 * Carries what is new in one copy of a plan to the other, in its order, until the signal: what has come from there, or passed it, stays. Rejects
 * where a line breaks.
 *
 * @param {object} way
 * @param {import('./copy-of-plan.mjs').Copy} way.from
 * @param {import('./copy-of-plan.mjs').Copy} way.to
 * @param {{ get: () => import('./places.mjs').Place | undefined, set: (place: import('./places.mjs').Place) => void }} way.place
 * @param {AbortSignal} way.until
 * @param {(bytes: number) => void} way.onSent so much more is on its way; less than nothing when it has arrived
 * @param {() => void} way.onNews
 * @param {(isFull: boolean) => void} way.onFull the other copy has no more room
 */
export async function carry(way) {
  while (!way.until.aborted) {
    const isFull = await carryUntilFull(way)
    way.onFull(isFull)
    if (isFull) await pause(FULL_MS, way.until)
  }
}

/**
 * @param {Parameters<typeof carry>[0]} way
 * @returns {Promise<boolean>}
 */
async function carryUntilFull({ from, to, place, until, onSent, onNews, onFull }) {
  let stands = await whereToGoOn(from, to, place.get())
  const consumer = await from.line.consumers.get(from.stream, {
    deliver_policy: DeliverPolicy.StartSequence,
    opt_start_seq: stands.seq + 1,
    ack_policy: AckPolicy.None,
    inactive_threshold: 300 * 1e9,
  })
  // A line that does nothing must cost a slow link nothing.
  const messages = await consumer.consume({ max_messages: 64, expires: 120_000, idle_heartbeat: 30_000 })
  const end = () => messages.stop()
  until.addEventListener('abort', end)
  /** @type {{ seq: number, isDone: boolean, here?: import('./places.mjs').Mark, there?: import('./places.mjs').Mark }[]} */
  const onTheWay = []
  let bytesOnTheWay = 0
  /** @type {unknown} */
  let fault
  let tellRoom = () => {}
  const settle = () => {
    let last
    while (onTheWay[0]?.isDone) {
      last = /** @type {typeof onTheWay[0]} */ (onTheWay.shift())
      const { seq, here = stands.here, there = stands.there } = last
      stands = { ...stands, seq, ...(here && { here }), ...(there && { there }) }
    }
    if (last) place.set(stands)
    tellRoom()
  }
  try {
    for await (const message of messages) {
      if (message.seq <= stands.seq) continue
      const path = passedThrough(message.headers, from.id)
      /** @type {typeof onTheWay[0]} */
      const one = { seq: message.seq, isDone: path.includes(to.id) || path.length === 0 }
      onTheWay.push(one)
      if (one.isDone) {
        settle()
        continue
      }
      onNews()
      const size = message.data.length
      while (bytesOnTheWay > 0 && bytesOnTheWay + size > AT_ONCE && !fault && !until.aborted)
        await new Promise((done) => {
          tellRoom = () => done(undefined)
        })
      if (fault || until.aborted) break
      bytesOnTheWay += size
      onSent(size)
      // A beginning counts the envelopes of the stream that it was laid down in: others begin with it only where they have none.
      const isBeginning = message.subject.endsWith('.begin') && !to.hasBeginning
      if (isBeginning) to.hasBeginning = true
      publish(to, message.data, path, isBeginning ? 'begin' : 'edits', ACK_MS + bytesOnTheWay / LEAST_PACE)
        .then((seq) => {
          one.isDone = true
          if (size <= SMALL) {
            const digest = digestOf(message.data)
            Object.assign(one, { here: { seq: one.seq, digest }, there: { seq, digest } })
          }
          onFull(false)
        })
        .catch((error) => {
          fault ??= error
          messages.stop()
        })
        .finally(() => {
          bytesOnTheWay -= size
          onSent(-size)
          settle()
        })
    }
  } finally {
    until.removeEventListener('abort', end)
    messages.stop()
    tellRoom = () => {}
    if (!from.connection.isClosed()) void consumer.delete().catch(() => {})
  }
  if (until.aborted) return false
  if (/maximum bytes exceeded|insufficient.*storage/i.test(String(fault))) return true
  throw fault ?? new Error('the stream ended')
}

/**
 * Gives the number that it has there.
 *
 * @param {import('./copy-of-plan.mjs').Copy} to
 * @param {Uint8Array} bytes
 * @param {readonly string[]} path
 * @param {string} kind
 * @param {number} timeout
 */
async function publish({ line, manager, stream, tag }, bytes, path, kind, timeout) {
  const subject = `plan.${tag}.${kind}`
  const via = headers()
  via.set(VIA, path.join(' '))
  // The largest has no room for where it was: it may come back once, where it is known.
  const isLargest = bytes.length > MOST_MESSAGE - 1024
  const options = { timeout, ...(!isLargest && { headers: via }) }
  const { seq, duplicate } = await line.publish(subject, bytes, { ...options, msgID: digestOf(bytes) })
  if (!duplicate) return seq
  // Whoever may write could have taken this name for something else.
  const same = await manager.streams.getMessage(stream, { seq })
  if (same && digestOf(same.data) === digestOf(bytes)) return seq
  return (await line.publish(subject, bytes, options)).seq
}

/**
 * @param {import('./copy-of-plan.mjs').Copy} from
 * @param {import('./copy-of-plan.mjs').Copy} to
 * @param {import('./places.mjs').Place | undefined} kept
 * @returns {Promise<import('./places.mjs').Place>}
 */
async function whereToGoOn(from, to, kept) {
  const anew = { from: from.id, to: to.id, seq: 0 }
  if (!kept || kept.from !== from.id || kept.to !== to.id || kept.seq > from.last) return anew
  // A box that a cut of power took its last second from counts on from where it was then.
  const stands = await Promise.all([hasStill(from, kept.here), hasStill(to, kept.there)])
  return stands.every(Boolean) ? kept : anew
}

/**
 * @param {number} ms
 * @param {AbortSignal} until
 */
export const pause = (ms, until) =>
  new Promise((done) => {
    const end = () => {
      clearTimeout(timer)
      until.removeEventListener('abort', end)
      done(undefined)
    }
    const timer = setTimeout(end, ms)
    if (until.aborted) end()
    until.addEventListener('abort', end)
  })
