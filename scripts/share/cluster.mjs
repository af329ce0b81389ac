import { join } from 'node:path'
import { ensureDependencies, ROOT, stop } from '../dependencies.mjs'

ensureDependencies()
const { findNatsServer, installNatsServer } = await import('./nats-server.mjs')
const { startThreeBoxes } = await import('./three-boxes.mjs')
const { builtSite } = await import('../site.mjs')

/** Three boxes on one machine, for trying: `node scripts/share/cluster.mjs`. Kill any one of them, and the plans go on. */
const nats = findNatsServer() ?? installNatsServer()
if (!nats) stop('A cluster needs nats-server: install it, or name it by NATS_SERVER=/path.')
const boxes = await startThreeBoxes({
  ...{ folder: join(ROOT, 'shared-plans'), site: await builtSite(), nats, port: 4790 },
  tell: (sentence) => console.error(sentence),
})
for (const [at, box] of boxes.entries())
  console.log(`Box ${at + 1} (nats-server ${box.natsPid()}) is at ${box.addresses.join(' and ')}`)
for (const signal of ['SIGINT', 'SIGTERM'])
  process.on(signal, () => void Promise.all(boxes.map((box) => box.stop())).then(() => process.exit(0)))
