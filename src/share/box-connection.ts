import { type NatsConnection, wsconnect } from '@nats-io/nats-core'
import { type PlanKeys, passOf, tagOf } from './plan-keys'

/** Where the box that served this page takes lines. */
const lineAddress = (): string =>
  `${location.protocol === 'https:' ? 'wss' : 'ws'}://${location.host}/share/ws`

/** After an answer that did not come the next try waits so long, ms. */
export const AGAIN_MS = 1500

export const streamOf = (keys: PlanKeys): string => `PLAN_${tagOf(keys)}`

/** A line that is not up by then is tried anew, ms: radio can swallow the first words, and nobody says so. */
const UP_MS = 10_000

/** A connection with the rights of whoever has these keys. Rejects where none comes up. */
export async function connectTo(keys: PlanKeys, tries: number): Promise<NatsConnection> {
  const tag = tagOf(keys)
  const { read, write } = passOf(keys)
  let socket: WebSocket | undefined
  let isLate = false
  const connecting = wsconnect({
    servers: lineAddress(),
    user: `${tag}.${write ? 'w' : 'r'}`,
    pass: write ?? read,
    inboxPrefix: `_INBOX.${tag}`,
    maxReconnectAttempts: tries,
    reconnectTimeWait: AGAIN_MS,
    waitOnFirstConnect: tries < 0,
    timeout: UP_MS,
    wsFactory: async (_address, _options) => {
      socket = new WebSocket(lineAddress())
      return { socket, encrypted: location.protocol === 'https:' }
    },
  })
  // One that comes up after all is not left open.
  void connecting.then(
    (late) => {
      if (isLate) void late.close()
    },
    () => undefined,
  )
  let timer: ReturnType<typeof setTimeout> | undefined
  const late = new Promise<never>((_, fail) => {
    timer = setTimeout(() => {
      isLate = true
      socket?.close()
      fail(new Error('the line did not come up'))
    }, UP_MS)
  })
  return await Promise.race([connecting, late]).finally(() => clearTimeout(timer))
}

/** So often it is asked whether the box still answers, ms. */
const ASK_MS = 5000

/**
 * Resolves when the box no longer answers on a line: a WebSocket over radio that went quiet stays open for minutes, also when it is told to
 * close.
 */
export async function quiet(link: NatsConnection): Promise<void> {
  const wait = (ms: number) => new Promise<false>((done) => setTimeout(() => done(false), ms))
  const answers = () =>
    link.flush().then(
      () => true,
      () => false,
    )
  do await wait(ASK_MS)
  while (!link.isClosed() && (await Promise.race([answers(), wait(UP_MS)])))
}
