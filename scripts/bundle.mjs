import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs'
import { basename, dirname, join, resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import { ROOT } from './dependencies.mjs'

const CACHE = join(ROOT, 'node_modules/.cache/fieldpair')
const THIS_FILE = 'scripts/bundle.mjs'

/**
 * Loads a module of src/ in Node. Bundled once and kept until a source changes: that way a command starts at once.
 *
 * @param {string} entry path under the project, `src/command/report-command.ts`
 */
export async function load(entry) {
  const folder = join(CACHE, basename(entry, '.ts'))
  const file = join(folder, `${basename(entry, '.ts')}.mjs`)
  if (!existsSync(file) || statSync(file).mtimeMs < newestSource(entry)) await bundle(entry, folder)
  return import(pathToFileURL(file).href)
}

/** @param {string} entry */
function newestSource(entry) {
  const paths = ['src', dirname(entry)].flatMap((folder) =>
    readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' }).map((name) => join(folder, name)),
  )
  paths.push('package-lock.json', THIS_FILE)
  return Math.max(...paths.map((path) => statSync(join(ROOT, path)).mtimeMs))
}

/**
 * @param {string} entry
 * @param {string} folder
 */
async function bundle(entry, folder) {
  const { build } = await import('vite')
  const { devDependencies } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'))
  // Another process may be doing the same: each writes beside the place and moves in whole, or finds it taken.
  const outDir = `${folder}-${process.pid}`
  await build({
    root: ROOT,
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    plugins: [scriptsStay],
    // Packages too, so that only what is used of them is read at the start; but not what only tests use.
    ssr: { noExternal: true, external: Object.keys(devDependencies) },
    build: {
      ssr: entry,
      outDir,
      emptyOutDir: true,
      target: 'node20',
      rolldownOptions: { output: { entryFileNames: '[name].mjs' } },
    },
  })
  mkdirSync(CACHE, { recursive: true })
  try {
    rmSync(folder, { recursive: true, force: true })
    renameSync(outDir, folder)
  } catch {
    rmSync(outDir, { recursive: true, force: true })
  }
}

/** A script finds the project by its own place: what is bundled imports it from there. */
const scriptsStay = {
  name: 'scripts-stay',
  enforce: /** @type {const} */ ('pre'),
  /**
   * @param {string} source
   * @param {string | undefined} importer
   */
  resolveId(source, importer) {
    const path = importer && source.startsWith('.') ? resolve(dirname(importer), source) : ''
    return dirname(path) === join(ROOT, 'scripts') ? { id: pathToFileURL(path).href, external: true } : null
  },
}
