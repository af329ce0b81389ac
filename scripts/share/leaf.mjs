import { join } from 'node:path'
import { ensureDependencies, ROOT } from '../dependencies.mjs'

ensureDependencies()
const { endOnSignal, startBox } = await import('./box.mjs')
const { neededNatsServer } = await import('./nats-server.mjs')
const { startThreeBoxes } = await import('./three-boxes.mjs')
const { builtSite } = await import('../site.mjs')

/**
 * A base of three boxes and a camp's box that is its leaf, on one machine, for trying: `node scripts/share/leaf.mjs`. Share a plan at one, and
 * open the invitation at the other. On two machines: `npm run share -- --base http://base:4790` at the camp.
 */
const nats = neededNatsServer('A leaf')
const site = await builtSite()
const folder = join(ROOT, 'shared-plans')
const tell = (/** @type {string} */ sentence) => console.error(sentence)
const base = await startThreeBoxes({ folder, site, nats, port: 4790, tell })
const camp = await startBox({
  ...{ folder: join(folder, 'camp'), site, nats, port: 4793 },
  base: base.map(({ port }) => `http://127.0.0.1:${port}`),
  tell: (sentence) => tell(`camp: ${sentence}`),
})
for (const [at, box] of base.entries())
  console.log(`Box ${at + 1} of the base (nats-server ${box.natsPid()}) is at ${box.addresses.join(' and ')}`)
console.log(`The camp's box (nats-server ${camp.natsPid()}) is at ${camp.addresses.join(' and ')}`)
endOnSignal([camp, ...base])
