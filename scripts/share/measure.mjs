import { fork } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { ensureDependencies } from '../dependencies.mjs'

ensureDependencies()
const { values } = parseArgs({
  options: {
    hands: { type: 'string', default: '50' },
    seconds: { type: 'string', default: '20' },
    stations: { type: 'string', default: '1000' },
  },
})
const { load } = await import('../bundle.mjs')
const { neededNatsServer } = await import('./nats-server.mjs')
const { startBox } = await import('./box.mjs')
const { sharedForMeasuring } = await load('test/share/measured-hands.ts')

/**
 * So many hands change one plan, twice a second each, over a real box: `node scripts/share/measure.mjs`. All but one send only, from a process of
 * their own. The last one reads along as a person's screen does, in another process (opens each envelope, takes the edits in, reckons the
 * report), and tells how long after each edit its figures stood.
 */
const nats = neededNatsServer('Measuring')
const folder = mkdtempSync(join(tmpdir(), 'box-'))
const box = await startBox({ folder, site: folder, nats, port: 0, host: '127.0.0.1' })
const announce = (/** @type {object} */ plan) =>
  fetch(`http://127.0.0.1:${box.port}/share/plans`, { method: 'POST', body: JSON.stringify(plan) })
const told = {
  ...(await sharedForMeasuring(Number(values.stations), announce)),
  ...{ port: box.port, natsPort: box.natsPort },
  ...{ hands: Number(values.hands) - 1, seconds: Number(values.seconds) },
}

/** @param {string} part */
function start(part) {
  const child = fork(fileURLToPath(new URL('measure-part.mjs', import.meta.url)), [part], {
    // The page's own line to the box needs a WebSocket, which Node 20 has only when asked.
    execArgv: ['--experimental-websocket', '--no-warnings'],
  })
  child.send(told)
  /** @type {Promise<any>} */
  const result = new Promise((done, fail) => {
    child.on('message', (/** @type {any} */ word) => word.result && done(word.result))
    child.on('exit', (code) => fail(new Error(`${part} ended with ${code}`)))
  })
  /** @type {Promise<void>} */
  const ready = new Promise((done) => {
    child.on('message', (/** @type {any} */ word) => word.ready && done())
  })
  return { result, ready, go: () => child.send('go') }
}

const senders = start('send')
await senders.ready
const observer = start('observe')
await observer.ready
senders.go()
observer.go()
const [sent, seen] = await Promise.all([senders.result, observer.result])
const status = readFileSync(`/proc/${box.natsPid()}/status`, 'utf8')
console.log(
  JSON.stringify({ ...sent, ...seen, boxMemoryKb: Number(/VmRSS:\s+(\d+)/.exec(status)?.[1]) }, null, 2),
)
await box.stop()
rmSync(folder, { recursive: true, force: true })
process.exit(0)
