import { randomBytes } from 'node:crypto'
import { join } from 'node:path'
import { ensureDependencies, ROOT, stop } from '../dependencies.mjs'

ensureDependencies()
const { startBox } = await import('./box.mjs')
const { findNatsServer, freePort, installNatsServer } = await import('./nats-server.mjs')
const { builtSite } = await import('../site.mjs')

/**
 * Three boxes on one machine that hold every stream three times, for trying: `node scripts/share/cluster.mjs`. Kill any one of them, and
 * the plans go on. On three machines each has its own folder, and the routes name the machines.
 */
const COUNT = 3
const nats = findNatsServer() ?? installNatsServer()
if (!nats) stop('A cluster needs nats-server: install it, or name it by NATS_SERVER=/path.')
const site = await builtSite()
const ports = []
for (let at = 0; at < COUNT; at++) ports.push(await freePort())
const routes = ports.map((port) => `"nats://127.0.0.1:${port}"`).join(', ')
const pass = randomBytes(24).toString('base64url')
const starting = ports.map((port, at) =>
  startBox({
    folder: join(ROOT, 'shared-plans', `cluster-${at + 1}`),
    site,
    nats,
    pass,
    name: `box-${at + 1}`,
    copies: COUNT,
    port: 4790 + at,
    more: `cluster { name: fieldpair, listen: "127.0.0.1:${port}", routes: [${routes}] }`,
    onPlan: (plan) => void others(at).then((each) => each.map((box) => box.letIn(plan))),
    tell: (sentence) => console.error(`box ${at + 1}: ${sentence}`),
  }),
)
/** @param {number} at */
const others = async (at) => (await Promise.all(starting)).filter((_, other) => other !== at)
const boxes = await Promise.all(starting)
for (const [at, box] of boxes.entries())
  console.log(`Box ${at + 1} (nats-server ${box.natsPid()}) is at ${box.addresses.join(' and ')}`)
for (const signal of ['SIGINT', 'SIGTERM'])
  process.on(signal, () => void Promise.all(boxes.map((box) => box.stop())).then(() => process.exit(0)))
