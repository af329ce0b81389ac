import { headers } from '@nats-io/nats-core'
import { passedThrough, VIA } from './passed-through.mjs'

/** Of one hand no more than its last word goes over in this time, ms: it is there for others for 20 s. */
const EACH_MS = 2000
/** Where the key of the hand stands in an envelope. */
const KEY = { from: 1, to: 33 }

/**
 * Passes on who is where, as it is now: nothing of it is kept, and it waits for nothing.
 *
 * @param {import('./copy-of-plan.mjs').Copy} from
 * @param {import('./copy-of-plan.mjs').Copy} to
 * @param {AbortSignal} until
 * @param {() => boolean} isBusy what is kept goes first
 */
export function relayPresence(from, to, until, isBusy) {
  const subject = `here.${from.tag}`
  /** @type {Map<string, import('@nats-io/nats-core').Msg>} */
  const last = new Map()
  const hearing = from.connection.subscribe(subject, {
    callback: (error, message) => {
      if (error || message.data.length > 4096 || last.size > 1000) return
      last.set(Buffer.from(message.data.subarray(KEY.from, KEY.to)).toString('base64'), message)
    },
  })
  const timer = setInterval(() => {
    for (const message of last.values()) {
      const path = passedThrough(message.headers, from.id)
      if (isBusy() || path.length === 0 || path.includes(to.id) || to.connection.isClosed()) continue
      const via = headers()
      via.set(VIA, path.join(' '))
      to.connection.publish(subject, message.data, { headers: via })
    }
    last.clear()
  }, EACH_MS)
  until.addEventListener('abort', () => {
    clearInterval(timer)
    if (!from.connection.isClosed()) hearing.unsubscribe()
  })
}
