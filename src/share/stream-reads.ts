import { AckPolicy, DeliverPolicy, jetstream, jetstreamManager } from '@nats-io/jetstream'
import type { Edit } from '../journal/edit'
import type { Journal } from '../journal/journal'
import { connectTo, streamOf } from './box-connection'
import type { HandNames } from './hand-names'
import { type PlanKeys, tagOf } from './plan-keys'
import { beginningIn, Room } from './room'

/** The page answers to its own hand after so many envelopes. */
const AT_ONCE = 50

export type Begun = NonNullable<ReturnType<typeof beginningIn>>

/**
 * The last beginning on the box that can be opened, to begin with. Undefined where the box lets nobody in with these keys; null where no
 * beginning there can be opened. A hand that lays down nonsense keeps nobody from what was laid down before.
 */
export async function lastBeginning(keys: PlanKeys): Promise<Begun | null | undefined> {
  const connection = await connectTo(keys, 1)
  try {
    const manager = await jetstreamManager(connection, { checkAPI: false })
    const [stream, subject] = [streamOf(keys), `plan.${tagOf(keys)}.begin`]
    const last = await manager.streams.getMessage(stream, { last_by_subj: subject })
    if (!last) return undefined
    let found = beginningIn(last.data, keys)
    for (let seq = 1; !found && seq < last.seq; ) {
      const earlier = await manager.streams.getMessage(stream, { seq, next_by_subj: subject } as never)
      if (!earlier || earlier.seq >= last.seq) break
      found = beginningIn(earlier.data, keys)
      seq = earlier.seq + 1
      // The first is the plan's own; of those after it the last good one would do as well, but nonsense is rare and this is quick.
    }
    return found ?? null
  } finally {
    await connection.close()
  }
}

/** All that the box has of a plan: how it began, and every edit since. A sentence where that cannot be read. */
export async function wholeStream(
  keys: PlanKeys,
  names: HandNames,
): Promise<{ readonly begun: Journal; readonly edits: readonly Edit[] } | string> {
  const connection = await connectTo(keys, 1).catch(() => null)
  if (!connection) return 'The box is not reached: the log begins where this page joined.'
  try {
    const manager = await jetstreamManager(connection, { checkAPI: false })
    const { state } = await manager.streams.info(streamOf(keys))
    const consumer = await jetstream(connection, { checkAPI: false }).consumers.get(streamOf(keys), {
      deliver_policy: DeliverPolicy.All,
      ack_policy: AckPolicy.None,
    } as never)
    let room: Room | undefined
    let begun: Journal | undefined
    const edits: Edit[] = []
    for await (const message of await consumer.consume({ idle_heartbeat: 5000 })) {
      if (!room) {
        const found = beginningIn(message.data, keys)
        if (found) {
          room = new Room(keys, found.journal, null)
          begun = beginningIn(message.data, keys)!.journal
        }
      } else edits.push(...room.receive(message.data).added)
      if (message.seq % AT_ONCE === 0) await new Promise((done) => setTimeout(done))
      if (message.seq >= state.last_seq) break
    }
    if (!room || !begun) return 'What is on the box cannot be opened: the log begins where this page joined.'
    names.take(room.names.all())
    return { begun, edits }
  } catch {
    return 'The box stopped answering: the log begins where this page joined.'
  } finally {
    await connection.close().catch(() => undefined)
  }
}
