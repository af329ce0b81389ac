import { load } from '../bundle.mjs'

/** One side of a measurement or a trial in a process of its own: `send`, `observe` or `tryHand`. What it is told comes in the first message. */
const [part = ''] = process.argv.slice(2)
const heard = () => new Promise((done) => process.once('message', done))
const told = await heard()
const { connect } = await import('@nats-io/transport-node')
const { jetstream } = await import('@nats-io/jetstream')
const parts = await load(part === 'tryHand' ? 'test/share/trial-hand.ts' : 'test/share/measured-hands.ts')
const say = (/** @type {object} */ word) => process.send?.(word)
const go = part === 'tryHand' ? null : heard()
say({ result: await parts[part]({ ...told, say, go, connect, jetstream }) })
process.exit(0)
