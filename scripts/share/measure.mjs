import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { ensureDependencies, stop } from '../dependencies.mjs'

ensureDependencies()
const { values } = parseArgs({
  options: {
    hands: { type: 'string', default: '50' },
    seconds: { type: 'string', default: '20' },
    stations: { type: 'string', default: '1000' },
  },
})
const { load } = await import('../bundle.mjs')
const { findNatsServer, installNatsServer } = await import('./nats-server.mjs')
const { startBox } = await import('./box.mjs')
const { connect } = await import('@nats-io/transport-node')
const { jetstream } = await import('@nats-io/jetstream')
const { measuredHands } = await load('test/share/measured-hands.ts')

/**
 * So many hands change one plan, twice a second each, over a real box: `node scripts/share/measure.mjs`. One more hand reads along as a screen
 * does (opens each envelope, takes the edits in, mends, reckons the report), and tells how long after each edit its figures stood.
 */
const nats = findNatsServer() ?? installNatsServer()
if (!nats) stop('Measuring needs nats-server: install it, or name it by NATS_SERVER=/path.')
const folder = mkdtempSync(join(tmpdir(), 'box-'))
const box = await startBox({ folder, site: folder, nats, port: 0, host: '127.0.0.1' })
const announce = (/** @type {object} */ plan) =>
  fetch(`http://127.0.0.1:${box.port}/share/plans`, { method: 'POST', body: JSON.stringify(plan) })
/** @param {string} user @param {string} pass @param {string} tag */
const line = (user, pass, tag) =>
  connect({ servers: `127.0.0.1:${box.natsPort}`, user, pass, inboxPrefix: `_INBOX.${tag}` })
const result = await measuredHands({
  hands: Number(values.hands),
  seconds: Number(values.seconds),
  stations: Number(values.stations),
  announce,
  line,
  jetstream,
})
const status = readFileSync(`/proc/${box.natsPid()}/status`, 'utf8')
console.log(JSON.stringify({ ...result, boxMemoryKb: Number(/VmRSS:\s+(\d+)/.exec(status)?.[1]) }, null, 2))
await box.stop()
rmSync(folder, { recursive: true, force: true })
process.exit(0)
