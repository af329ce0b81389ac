import {
  AckPolicy,
  DeliverPolicy,
  type JetStreamClient,
  jetstream,
  jetstreamManager,
} from '@nats-io/jetstream'
import type { NatsConnection } from '@nats-io/nats-core'
import { sha256 } from '@noble/hashes/sha2.js'
import { toBase64Url } from '../files/carry/base64-url'
import { AGAIN_MS, connectTo, quiet, streamOf } from './box-connection'
import { type PlanKeys, tagOf } from './plan-keys'

/** What a line to a box tells. */
export interface BoxEvents {
  /** An envelope of the stream, in its order. */
  readonly onEnvelope: (bytes: Uint8Array, number: number, atMs: number) => void
  /** All that the box had is here. */
  readonly onCaughtUp: () => void
  readonly onApart: () => void
  /** A word that is not kept: who is where. */
  readonly onHere: (bytes: Uint8Array) => void
  /** The box does not let this hand in, or has not such a plan. */
  readonly onRefused: () => void
  readonly onNearlyFull: (sentence: string) => void
  /** The box has less than it had, or another stream: its disk was lost, and all that it has comes anew. */
  readonly onLost: () => void
  /** Which stream the numbers count in. */
  readonly onStream: (stream: string) => void
}

export interface BoxLine {
  /** Resolves once the box has it on its disk. Rejects where it is not reached: it may be said again. */
  readonly publish: (bytes: Uint8Array) => Promise<void>
  /** The same for a beginning. */
  readonly begin: (bytes: Uint8Array) => Promise<void>
  readonly tellHere: (bytes: Uint8Array) => void
  readonly close: () => Promise<void>
}

const ACK_MS = 5000
/** From this part of its room on the box says that a plan is nearly full. */
const NEARLY_FULL = 0.9

/** How far a stream was read. */
export interface StreamPlace {
  /** Number of its last envelope that is known. */
  readonly upTo: number
  /** Which stream it is: one that is made anew counts anew. Undefined where that is not known. */
  readonly stream?: string | undefined
  /** When the box took that envelope: one that a cut of power took from it was replaced by others of the same number. */
  readonly atMs?: number | undefined
}

/** A line to the box that is kept up as long as it is not closed: what comes after a place. */
export async function openLine(keys: PlanKeys, after: StreamPlace, events: BoxEvents): Promise<BoxLine> {
  const tag = tagOf(keys)
  let isClosed = false
  let next = after.upTo + 1
  let known = after.stream
  let lastMs = after.atMs
  let connection: NatsConnection | null = null
  let stream: JetStreamClient | null = null

  const follow = async (link: NatsConnection) => {
    const manager = await jetstreamManager(link, { checkAPI: false })
    const { state, config, created } = await manager.streams.info(streamOf(keys))
    const part = state.bytes / config.max_bytes
    if (config.max_bytes > 0 && part > NEARLY_FULL)
      events.onNearlyFull(
        `The room that the box has for this plan is ${Math.floor(part * 100)} % full. “Shut somebody out…” gives the plan a fresh start on the box: then invite all anew.`,
      )
    const lost = () => {
      next = 1
      lastMs = undefined
      events.onLost()
    }
    if (state.last_seq < next - 1 || (known !== undefined && known !== created)) lost()
    known = created
    events.onStream(created)
    if (state.last_seq < next) events.onCaughtUp()
    const consumer = await jetstream(link, { checkAPI: false }).consumers.get(streamOf(keys), {
      deliver_policy: DeliverPolicy.StartSequence,
      opt_start_seq: lastMs === undefined ? next : next - 1,
      ack_policy: AckPolicy.None,
      // Longer than a link is quiet before the line is given up: the box must not forget meanwhile what it was to send.
      inactive_threshold: 60 * 1e9,
    } as never)
    for await (const message of await consumer.consume({ idle_heartbeat: 5000 })) {
      // A line that was given up may still bring what it had swallowed: all of it comes over the new one.
      if (isClosed || connection !== link) return
      const atMs = message.time.getTime()
      if (message.seq === next - 1 && lastMs !== undefined && lastMs !== atMs) return lost()
      if (message.seq < next) continue
      next = message.seq + 1
      lastMs = atMs
      events.onEnvelope(message.data, message.seq, atMs)
      if (message.info.pending === 0) events.onCaughtUp()
    }
  }
  const hear = async (link: NatsConnection) => {
    for await (const message of link.subscribe(`here.${tag}`)) events.onHere(message.data)
  }
  const keepUp = async () => {
    while (!isClosed) {
      try {
        connection = await connectTo(keys, 0)
        stream = jetstream(connection, { checkAPI: false })
        void hear(connection).catch(() => undefined)
        await Promise.race([follow(connection), connection.closed(), quiet(connection)])
      } catch (error) {
        const { name } = error as Error
        if (
          name === 'AuthorizationError' ||
          name === 'PermissionViolationError' ||
          name === 'StreamNotFoundError'
        )
          events.onRefused()
      }
      stream = null
      const last = connection
      connection = null
      void last?.close().catch(() => undefined)
      if (isClosed) return
      events.onApart()
      await new Promise((done) => setTimeout(done, AGAIN_MS))
    }
  }
  void keepUp()
  const publish = async (bytes: Uint8Array, kind: 'edits' | 'begin') => {
    if (!stream) throw new Error('the box is not reached')
    // What nobody knows before it is said nobody can say before: the box takes each name once.
    const msgID = toBase64Url(sha256(bytes).subarray(0, 16))
    await stream.publish(`plan.${tag}.${kind}`, bytes, { msgID, timeout: ACK_MS })
  }
  return {
    publish: (bytes) => publish(bytes, 'edits'),
    begin: (bytes) => publish(bytes, 'begin'),
    tellHere: (bytes) => {
      if (connection && !connection.isClosed()) connection.publish(`here.${tag}`, bytes)
    },
    close: async () => {
      isClosed = true
      await connection?.close().catch(() => undefined)
    },
  }
}
