import { load } from '../bundle.mjs'

/** One side of a measurement in a process of its own, started by measure.mjs: `senders` or `observer`, and what it is told in the first message. */
const [part] = process.argv.slice(2)
const heard = () => new Promise((done) => process.once('message', done))
const told = await heard()
const { connect } = await import('@nats-io/transport-node')
const { jetstream } = await import('@nats-io/jetstream')
const { send, observe } = await load('test/share/measured-hands.ts')
const say = (/** @type {object} */ word) => process.send?.(word)
const wish = { ...told, say, go: heard(), connect, jetstream }
say({ result: await (part === 'senders' ? send(wish) : observe(wish)) })
process.exit(0)
