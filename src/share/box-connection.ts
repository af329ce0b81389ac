import { type NatsConnection, wsconnect } from '@nats-io/nats-core'
import { type PlanKeys, passOf, tagOf } from './plan-keys'

/** Where the box that served this page takes lines. */
const lineAddress = (): string =>
  `${location.protocol === 'https:' ? 'wss' : 'ws'}://${location.host}/share/ws`

/** After an answer that did not come the next try waits so long, ms. */
export const AGAIN_MS = 1500

export const streamOf = (keys: PlanKeys): string => `PLAN_${tagOf(keys)}`

/** A connection with the rights of whoever has these keys. */
export function connectTo(keys: PlanKeys, tries: number): Promise<NatsConnection> {
  const tag = tagOf(keys)
  const { read, write } = passOf(keys)
  return wsconnect({
    servers: lineAddress(),
    user: `${tag}.${write ? 'w' : 'r'}`,
    pass: write ?? read,
    inboxPrefix: `_INBOX.${tag}`,
    maxReconnectAttempts: tries,
    reconnectTimeWait: AGAIN_MS,
    waitOnFirstConnect: tries < 0,
    pingInterval: 10_000,
    maxPingOut: 2,
    wsFactory: async (_address, _options) => ({
      socket: new WebSocket(lineAddress()),
      encrypted: location.protocol === 'https:',
    }),
  })
}
