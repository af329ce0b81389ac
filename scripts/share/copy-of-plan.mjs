import { createHash } from 'node:crypto'
import { jetstream, jetstreamManager } from '@nats-io/jetstream'

/**
 * One copy of a plan's stream: the one in this box, or the one at the base.
 *
 * @typedef {object} Copy
 * @property {string} tag
 * @property {string} stream
 * @property {string} id follows from the moment at which the stream was made: a fresh folder has another, three boxes of a cluster have one
 * @property {import('@nats-io/nats-core').NatsConnection} connection
 * @property {import('@nats-io/jetstream').JetStreamManager} manager
 * @property {import('@nats-io/jetstream').JetStreamClient} line
 * @property {number} first
 * @property {number} last
 * @property {boolean} hasBeginning
 */

/** @param {Uint8Array} bytes */
export const digestOf = (bytes) =>
  createHash('sha256').update(bytes).digest().subarray(0, 16).toString('base64url')

/** On a slow link an answer waits behind all that is on its way; whether the link lives at all is watched elsewhere, ms. */
const ANSWER_MS = 60_000

/**
 * @param {import('@nats-io/nats-core').NatsConnection} connection
 * @param {string} tag
 * @returns {Promise<Copy>}
 */
export async function copyOf(connection, tag) {
  const options = { checkAPI: false, timeout: ANSWER_MS }
  const manager = await jetstreamManager(connection, options)
  const stream = `PLAN_${tag}`
  const { created, state } = await manager.streams.info(stream, { subjects_filter: `plan.${tag}.begin` })
  return {
    ...{ tag, stream, connection, manager, line: jetstream(connection, options) },
    id: createHash('sha256').update(created).digest().subarray(0, 6).toString('base64url'),
    ...{ first: state.first_seq, last: state.last_seq },
    hasBeginning: Object.keys(state.subjects ?? {}).length > 0,
  }
}

/**
 * Whether a copy has a message still. One that was let go of counts: nothing else stands in its place.
 *
 * @param {Copy} copy
 * @param {import('./places.mjs').Mark | undefined} mark
 */
export async function hasStill({ manager, stream, first, last }, mark) {
  if (!mark || mark.seq < first) return true
  if (mark.seq > last) return false
  const message = await manager.streams.getMessage(stream, { seq: mark.seq })
  return message !== null && digestOf(message.data) === mark.digest
}
