import { join } from 'node:path'
import { ensureDependencies, ROOT } from '../dependencies.mjs'

ensureDependencies()
const { endOnSignal } = await import('./box.mjs')
const { neededNatsServer } = await import('./nats-server.mjs')
const { startThreeBoxes } = await import('./three-boxes.mjs')
const { builtSite } = await import('../site.mjs')

/** Three boxes on one machine, for trying: `node scripts/share/cluster.mjs`. Kill any one of them, and the plans go on. */
const nats = neededNatsServer('A cluster')
const boxes = await startThreeBoxes({
  ...{ folder: join(ROOT, 'shared-plans'), site: await builtSite(), nats, port: 4790 },
  tell: (sentence) => console.error(sentence),
})
for (const [at, box] of boxes.entries())
  console.log(`Box ${at + 1} (nats-server ${box.natsPid()}) is at ${box.addresses.join(' and ')}`)
endOnSignal(boxes)
