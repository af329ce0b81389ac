import { isAbsolute, join } from 'node:path'
import { parseArgs } from 'node:util'
import { ensureDependencies, ROOT, stop } from './dependencies.mjs'

ensureDependencies()
const { neededNatsServer } = await import('./share/nats-server.mjs')
const { endOnSignal, startBox } = await import('./share/box.mjs')
const { builtSite } = await import('./site.mjs')

const { values } = parseArgs({
  options: {
    port: { type: 'string', default: '4790' },
    data: { type: 'string', default: join(ROOT, 'shared-plans') },
    base: { type: 'string', default: '' },
  },
})
const port = Number(values.port)
if (!Number.isInteger(port) || port < 0 || port > 65_535)
  stop(`--port ${values.port}: give a number up to 65535.`)
const base = values.base.split(',').filter(Boolean)
if (!base.every((each) => /^https?:\/\//.test(each) && URL.canParse(each)))
  stop(`--base ${values.base}: give the address of the base's box, such as http://base:4790.`)
const folder = isAbsolute(values.data)
  ? values.data
  : join(process.env.INIT_CWD ?? process.cwd(), values.data)

const nats = neededNatsServer('Sharing')
console.error('Building the program …')
const site = await builtSite()
const box = await startBox({
  ...{ folder, site, nats, port, tell: (sentence) => console.error(sentence) },
  ...(base.length > 0 && { base }),
}).catch((error) => stop(`The box could not be started: ${error.message}`))
const [here, ...others] = box.addresses
const forAll = others.length > 0 ? others.join('  or  ') : 'this machine is in no network now'
console.log(`The box is on.
  For this machine:        ${here}
  For all in its network:  ${forAll}

1. Open the address for all, on this machine too: an invitation from “localhost” works nowhere else.
2. In the program: Plans, “Change it together…”, “Share over this box”.
3. Give the invitation, as a link or as a code for a phone’s camera, to whoever is to join.

What is shared is kept in ${folder}, sealed: this box cannot read it.
Stop it with Ctrl-C. Everybody works on meanwhile, and all comes together when it is on again.`)
endOnSignal([box])
