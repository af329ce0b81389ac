import { isAbsolute, join } from 'node:path'
import { parseArgs } from 'node:util'
import { ensureDependencies, ROOT, stop } from './dependencies.mjs'

ensureDependencies()
const { findNatsServer, installNatsServer } = await import('./share/nats-server.mjs')
const { startBox } = await import('./share/box.mjs')
const { builtSite } = await import('./site.mjs')

const { values } = parseArgs({
  options: {
    port: { type: 'string', default: '4790' },
    data: { type: 'string', default: join(ROOT, 'shared-plans') },
  },
})
const port = Number(values.port)
if (!Number.isInteger(port) || port < 0 || port > 65_535)
  stop(`--port ${values.port}: give a number up to 65535.`)
const folder = isAbsolute(values.data)
  ? values.data
  : join(process.env.INIT_CWD ?? process.cwd(), values.data)

const nats = findNatsServer() ?? installNatsServer()
if (!nats)
  stop(
    'Sharing needs nats-server (Debian and Ubuntu: apt-get install nats-server; else nats.io), and it could not be installed here. Install it, or name it by NATS_SERVER=/path.',
  )
console.error('Building the program …')
const site = await builtSite()
const box = await startBox({ folder, site, nats, port, tell: (sentence) => console.error(sentence) }).catch(
  (error) => stop(`The box could not be started: ${error.message}`),
)
console.log(`Fieldpair is at ${box.addresses.join(' and ')}
What is shared is kept in ${folder}, sealed: this box cannot read it.
In the program: Plans, then “Change it together…”. Others on this network join by the link or the code shown there.
Stop it with Ctrl-C.`)
for (const signal of ['SIGINT', 'SIGTERM'])
  process.on(signal, () => {
    void box.stop().then(() => process.exit(0))
  })
