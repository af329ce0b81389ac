import { cpSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join, relative } from 'node:path'
import { parseArgs } from 'node:util'
import { ensureDependencies, ROOT } from './dependencies.mjs'

ensureDependencies()
process.chdir(ROOT)

const { values } = parseArgs({ options: { out: { type: 'string', default: 'dist' } } })
const site = values.out
const oneFile = join(site, 'Fieldpair.html')
const workshop = `${site}-one-file`

// The site first: the one file bears the name of its release, and is not among what its service worker keeps.
const { build } = await import('vite')
await build({ logLevel: 'warn', build: { outDir: site, emptyOutDir: true } })
process.env.SITE = site
await build({
  configFile: 'vite/one-file.ts',
  logLevel: 'warn',
  build: { outDir: workshop, emptyOutDir: true },
})
cpSync(join(workshop, 'index.html'), oneFile)
rmSync(workshop, { recursive: true })

const { zipSync } = await import('fflate')
const { version } = JSON.parse(readFileSync('package.json', 'utf8'))
const archive = join(site, `fieldpair-${version}.zip`)
const files = readdirSync(site, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && !entry.name.endsWith('.zip'))
  .map((entry) => join(entry.parentPath, entry.name))
const entries = files.map((file) => [
  `fieldpair/${relative(site, file).replaceAll('\\', '/')}`,
  readFileSync(file),
])
writeFileSync(archive, zipSync(Object.fromEntries(entries), { level: 9 }))
console.log(`${site}: the site\n${oneFile}: the whole program in one file, for a stick\n${archive}: both`)
