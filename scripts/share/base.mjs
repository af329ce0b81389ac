import { setMaxListeners } from 'node:events'
import { wsconnect } from '@nats-io/nats-core'
import WebSocket from 'ws'
import { LEAST_PACE, pause } from './carry.mjs'
import { Turns } from './turns.mjs'

/** A base that has not answered by then is not reached, ms. */
const UP_MS = 10_000
/** So often it is asked whether the link lives, ms. */
const ASK_MS = 5000
/** A base that is not reached is tried again after this, and after twice as long each time, up to the second, ms. */
const AGAIN_MS = [1500, 15_000]
/** So many lines are opened at once: a slow link would bring up none of a hundred. */
const OPENED_AT_ONCE = 4

/** What the base says no to. */
export class Refused extends Error {}

/**
 * A base as its visitors know it: it gives a box no other rights than a page.
 *
 * @param {readonly string[]} addresses of one box, or of several of a cluster
 * @param {(sentence: string) => void} tell
 * @param {AbortSignal} until
 */
export function baseOf(addresses, tell, until) {
  // All plans wait by it.
  setMaxListeners(0, until)
  let at = 0
  let told = ''
  let bytesOnTheWay = 0
  /** @type {Set<Line>} */
  const lines = new Set()
  /** @type {Promise<void> | null} */
  let reaching = null
  const opening = new Turns(OPENED_AT_ONCE)
  const patienceMs = () => UP_MS + bytesOnTheWay / LEAST_PACE
  const on = (/** @type {string} */ path) => new URL(path, addresses[at])
  const tellOnce = (/** @type {string} */ sentence) => {
    if (sentence !== told) tell(sentence)
    told = sentence
  }

  const apart = `The base at ${addresses.join(' or ')} is not reached: what is done here is kept here, and goes on when it is.`

  async function ask() {
    try {
      const answer = await fetch(on('/share/box.json'), { signal: AbortSignal.timeout(UP_MS) })
      const box = answer.ok ? await answer.json().catch(() => null) : null
      if (box?.box !== 1) return `What answers at ${addresses[at]} is no box.`
      return box.isFull ? `The base at ${addresses[at]} has no room on its disk: free some room there.` : ''
    } catch {
      return apart
    }
  }
  async function tryUntilReached() {
    const [least = 0, most = 0] = AGAIN_MS
    for (let wait = least; !until.aborted; wait = Math.min(2 * wait, most)) {
      let why = ''
      for (let left = addresses.length; left > 0; left--) {
        why = await ask()
        if (why === '')
          return tellOnce(`The base at ${addresses[at]} is reached: what is new goes both ways.`)
        at = (at + 1) % addresses.length
      }
      tellOnce(why)
      await pause(wait, until)
    }
  }

  /** A link over radio that went quiet leaves its lines up for minutes. */
  async function watch() {
    while (!until.aborted) {
      await pause(ASK_MS, until)
      // One line stands for the link: each would cost a slow one too much.
      const [first] = lines
      if (!first || (await lives(first))) {
        // Another one's turn.
        if (first && lines.delete(first) && !first.connection.isClosed()) lines.add(first)
        continue
      }
      tellOnce(apart)
      await Promise.all([...lines].map(async (line) => (await lives(line)) || line.drop()))
    }
  }
  /** @param {Line} line */
  async function lives(line) {
    const before = line.bytesRead()
    let hasAnswered = false
    line.connection.flush().then(
      () => {
        hasAnswered = true
      },
      () => {},
    )
    for (const ends = Date.now() + patienceMs(); Date.now() < ends; ) {
      await pause(250, until)
      // Part of something large is an answer too.
      if (hasAnswered || line.bytesRead() > before || line.connection.isClosed() || until.aborted) return true
    }
    return false
  }
  void watch()

  return {
    isBusy: () => bytesOnTheWay > 8192,
    onSent: (/** @type {number} */ bytes) => {
      bytesOnTheWay += bytes
    },
    /** Resolves when the base answers; all who wait ask once. */
    reached: () => {
      reaching ??= tryUntilReached().finally(() => {
        reaching = null
      })
      return reaching
    },
    /**
     * Has the base make room for a plan, as a page does. Rejects where it does not.
     *
     * @param {import('./box-config.mjs').SharedPlan} plan
     */
    register: async ({ tag, read, write }) => {
      if (!write) throw new Refused('Nobody has shared it there yet.')
      const answer = await fetch(on('/share/plans'), {
        method: 'POST',
        body: JSON.stringify({ tag, read, write }),
        signal: AbortSignal.timeout(patienceMs()),
      })
      if (answer.ok) return
      const { why = 'It takes no plans.' } = await answer.json().catch(() => ({}))
      throw new Refused(why)
    },
    /**
     * A line with the rights of whoever has a plan's words. Rejects where none comes up.
     *
     * @param {import('./box-config.mjs').SharedPlan} plan
     */
    line: async ({ tag, read, write }) => {
      await opening.take(tag)
      try {
        const line = await lineTo(on('/share/ws'), tag, write ? `${tag}.w` : `${tag}.r`, write ?? read)
        lines.add(line)
        void line.connection.closed().then(() => lines.delete(line))
        return line
      } finally {
        opening.give()
      }
    },
  }
}

/** @typedef {Awaited<ReturnType<typeof lineTo>>} Line */

/**
 * @param {URL} url
 * @param {string} tag
 * @param {string} user
 * @param {string} pass
 */
async function lineTo(url, tag, user, pass) {
  const address = url.href.replace(/^http/, 'ws')
  /** @type {WebSocket | undefined} */
  let socket
  /** @type {import('node:net').Socket | undefined} */
  let wire
  const connection = await wsconnect({
    ...{ servers: address, user, pass, inboxPrefix: `_INBOX.${tag}` },
    ...{ reconnect: false, timeout: UP_MS, noEcho: true },
    wsFactory: async () => {
      socket = new WebSocket(address, { handshakeTimeout: UP_MS, perMessageDeflate: false })
      socket.on('upgrade', (response) => {
        wire = response.socket
      })
      return { socket, encrypted: url.protocol === 'https:' }
    },
  }).catch((error) => {
    socket?.terminate()
    throw error
  })
  return {
    connection,
    bytesRead: () => wire?.bytesRead ?? 0,
    /** Whatever the other side says or does not say. */
    drop: () => {
      socket?.terminate()
      void connection.close().catch(() => {})
    },
  }
}
