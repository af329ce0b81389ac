import { existsSync, mkdtempSync, readdirSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { installWithApt, works } from './browser.mjs'
import { ensureDependencies, ROOT, stop } from './dependencies.mjs'

ensureDependencies()
process.chdir(ROOT)

const FIREFOX = [
  '/usr/bin/firefox-esr',
  '/usr/bin/firefox',
  '/Applications/Firefox.app/Contents/MacOS/firefox',
]
const LIBRARIES = ['/usr/lib/x86_64-linux-gnu', '/usr/lib/aarch64-linux-gnu', '/usr/lib64', '/usr/libexec']

const findFirefox = () => process.env.FIREFOX ?? FIREFOX.find((path) => existsSync(path))
/** WebKitGTK's own little browser, which its driver starts. */
const findMiniBrowser = () =>
  LIBRARIES.filter((folder) => existsSync(folder))
    .flatMap((folder) => readdirSync(folder).map((name) => join(folder, name, 'MiniBrowser')))
    .find((path) => /webkit2?gtk/.test(path) && existsSync(path))
const hasWebkit = () =>
  findMiniBrowser() !== undefined && works('sh', ['-c', 'command -v WebKitWebDriver Xvfb'])

if (!findFirefox()) installWithApt(['firefox-esr'])
if (!hasWebkit()) installWithApt(['webkit2gtk-driver', 'xvfb'])
if (!works('pdftotext', ['-v'])) installWithApt(['poppler-utils'])
const firefox = findFirefox()
const miniBrowser = hasWebkit() ? findMiniBrowser() : undefined
if (!firefox && !miniBrowser)
  stop(
    'Neither Firefox nor WebKitGTK is here: install firefox-esr, or webkit2gtk-driver and xvfb (Debian, Ubuntu).',
  )

const { build, preview } = await import('vite')
const { walk } = await import('./browsers/walk.mjs')
const { firefoxHand } = await import('./browsers/firefox-hand.mjs')
const { webkitHand } = await import('./browsers/webkit-hand.mjs')
await build({ logLevel: 'warn' })

/** @type {[string, (() => Promise<import('./browsers/walk.mjs').Hand>) | undefined][]} */
const BROWSERS = [
  ['Firefox', firefox ? () => firefoxHand(firefox) : undefined],
  ['WebKit', miniBrowser ? () => webkitHand(miniBrowser) : undefined],
]
let failed = 0
const [only] = process.argv.slice(2)
const walkers = BROWSERS.filter(([name]) => !only || name.toLowerCase() === only.toLowerCase())
for (const [name, open] of walkers) {
  console.log(`\n${name}`)
  if (!open) {
    console.log('  is not here, and could not be installed')
    failed += 1
    continue
  }
  const server = await preview({ logLevel: 'warn', preview: { port: 0, host: '127.0.0.1' } })
  const stopServer = () => server.close().catch(() => undefined)
  const hand = await open()
  try {
    await walk(hand, server.resolvedUrls?.local[0] ?? '', stopServer, (said) => console.log(`  ${said}`))
  } catch (error) {
    console.log(`  FAILS: ${error instanceof Error ? error.message : error}`)
    const picture = await hand.picture().catch(() => null)
    if (picture) {
      const path = join(mkdtempSync(join(tmpdir(), 'fieldpair-')), `${name}.png`)
      writeFileSync(path, picture)
      console.log(`  what was seen then: ${path}`)
    }
    failed += 1
  }
  await hand.close().catch(() => undefined)
  await stopServer()
}
console.log(failed === 0 ? '\nEvery browser goes the whole way.' : `\n${failed} of ${walkers.length} do not.`)
process.exit(failed === 0 ? 0 : 1)
