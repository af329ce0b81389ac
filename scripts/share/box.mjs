import { randomBytes } from 'node:crypto'
import { networkInterfaces } from 'node:os'
import { MOST_BYTES, MOST_PLANS, plansIn, writeConfig } from './box-config.mjs'
import { endOrphan, freePort, keepRunning, versionOf } from './nats-server.mjs'
import { syncsItself, syncWhatComes } from './sync-disk.mjs'
import { watchDisk } from './watch-disk.mjs'
import { webFront } from './web-front.mjs'

/** What somebody sent twice within so long is stored once, ns. */
const SAME_MESSAGE_NS = 10 * 60 * 1e9

/**
 * A box in the tent: the program, and one stream on disk for each plan that is shared here.
 *
 * @param {object} wish
 * @param {string} wish.folder where all that is shared is kept
 * @param {string} wish.site the built program
 * @param {string} wish.nats path of nats-server
 * @param {number} [wish.port] 0 for any
 * @param {string} [wish.host]
 * @param {number} [wish.copies] of each stream, in a cluster
 * @param {string} [wish.more] lines of configuration besides
 * @param {string} [wish.name]
 * @param {number} [wish.natsPort]
 * @param {string} [wish.pass]
 * @param {(plan: import('./box-config.mjs').SharedPlan) => void} [wish.onPlan] a plan is new here: other boxes of a cluster must let its hands in too
 * @param {(sentence: string) => void} [wish.tell]
 * @param {readonly string[]} [wish.base] addresses of a base to which this box is a leaf
 * @param {number} [wish.mostLines] to the base
 * @param {number} [wish.planBytes] what one plan may take of the disk
 */
export async function startBox(wish) {
  const { folder, site, nats, port = 4790, host = '0.0.0.0', copies = 1, more, name = 'box' } = wish
  const { planBytes = MOST_BYTES.plan } = wish
  const tell = wish.tell ?? (() => {})
  const plans = plansIn(folder)
  const pass = wish.pass ?? randomBytes(24).toString('base64url')
  const ports = { port: wish.natsPort ?? (await freePort()), wsPort: await freePort() }
  const configure = () =>
    writeConfig({
      folder,
      name,
      pass,
      version: versionOf(nats),
      plans: plans.all(),
      ...ports,
      ...(more && { more }),
    })
  await endOrphan(folder)
  const running = keepRunning(nats, configure(), tell)
  const { connect } = await import('@nats-io/transport-node')
  const { jetstreamManager } = await import('@nats-io/jetstream')
  const connection = await patiently(() =>
    connect({
      servers: `127.0.0.1:${ports.port}`,
      user: 'box',
      pass,
      maxReconnectAttempts: -1,
      reconnectTimeWait: 250,
    }),
  )
  const manager = await patiently(() => jetstreamManager(connection))

  const stopSyncing = syncsItself(versionOf(nats)) ? () => {} : syncWhatComes(connection, folder)

  /** @param {string} tag */
  const addStream = (tag) =>
    manager.streams.add({
      name: `PLAN_${tag}`,
      subjects: [`plan.${tag}.>`],
      storage: /** @type {any} */ ('file'),
      discard: /** @type {any} */ ('new'),
      max_bytes: planBytes,
      max_msg_size: MOST_BYTES.message,
      max_consumers: 1000,
      duplicate_window: SAME_MESSAGE_NS,
      num_replicas: copies,
      deny_delete: true,
      deny_purge: true,
    })
  /** @param {import('./box-config.mjs').SharedPlan} plan */
  const letIn = (plan) => {
    plans.add(plan)
    configure()
    running.reload()
  }
  /** @type {ReturnType<typeof import('./forward.mjs').startForwarding> | undefined} */
  let forwarding
  let turn = Promise.resolve()
  const disk = watchDisk(folder, tell, running.restart)
  const front = webFront({
    site,
    isFull: disk.isFull,
    hasBase: Boolean(wish.base?.length),
    wsPort: () => ports.wsPort,
    onNewPlan: (plan) => {
      const work = turn.then(async () => {
        const known = plans.get(plan.tag)
        if (known && (known.read !== plan.read || (plan.write && known.write && known.write !== plan.write)))
          return 'There is such a plan already.'
        if (!known && plans.size() >= MOST_PLANS) return 'This box takes no more plans.'
        const isNew = !known || (plan.write && !known.write)
        if (isNew) {
          letIn(plan)
          wish.onPlan?.(plan)
          // nats-server says nothing when it has read its users anew.
          await new Promise((done) => setTimeout(done, 150))
        }
        await patiently(() => addStream(plan.tag))
        if (isNew) forwarding?.add(plan)
        return ''
      })
      turn = work.then(
        () => undefined,
        () => undefined,
      )
      return work
    },
  })
  await new Promise((done, fail) => {
    front.server.once('error', fail)
    front.server.listen(port, host, () => done(undefined))
  })
  if (wish.base?.length) {
    const { startForwarding } = await import('./forward.mjs')
    const { base: addresses, mostLines } = wish
    const limit = mostLines === undefined ? {} : { mostLines }
    forwarding = startForwarding({ addresses, folder, connection, plans: plans.all(), tell, ...limit })
  }
  const address = front.server.address()
  const own = typeof address === 'object' && address ? address.port : port
  return {
    port: own,
    natsPort: ports.port,
    letIn,
    natsPid: running.pid,
    addresses: [`http://localhost:${own}/`, ...ownAddresses().map((each) => `http://${each}:${own}/`)],
    stop: async () => {
      forwarding?.stop()
      await front.close()
      stopSyncing()
      disk.stop()
      await connection.close().catch(() => {})
      await running.stop()
    },
  }
}

/** Addresses of this machine that others on its network reach. */
const ownAddresses = () =>
  Object.values(networkInterfaces())
    .flatMap((each) => each ?? [])
    .filter(({ family, internal }) => family === 'IPv4' && !internal)
    .map(({ address }) => address)

/**
 * A server that was just started answers in a moment.
 *
 * @template T
 * @param {() => Promise<T>} work
 * @returns {Promise<T>}
 */
async function patiently(work) {
  for (let left = 60; ; left--) {
    try {
      return await work()
    } catch (error) {
      if (left === 0) throw error
      await new Promise((done) => setTimeout(done, 250))
    }
  }
}

/**
 * Ends boxes in order when the program is asked to end.
 *
 * @param {readonly { stop: () => Promise<unknown> }[]} boxes
 */
export function endOnSignal(boxes) {
  for (const signal of ['SIGINT', 'SIGTERM'])
    process.on(signal, () => void Promise.all(boxes.map((box) => box.stop())).then(() => process.exit(0)))
}
