import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs'
import { basename, join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { ROOT } from './dependencies.mjs'

const CACHE = join(ROOT, 'node_modules/.cache/fieldpair')
const THIS_FILE = 'scripts/bundle.mjs'

/**
 * Loads a module of src/ in Node. Bundled once and kept until a source changes: that way a command starts at once.
 *
 * @param {string} entry path under the project, `src/report/command-line.ts`
 */
export async function load(entry) {
  const folder = join(CACHE, basename(entry, '.ts'))
  const file = join(folder, `${basename(entry, '.ts')}.mjs`)
  if (!existsSync(file) || statSync(file).mtimeMs < newestSource()) await bundle(entry, folder)
  return import(pathToFileURL(file).href)
}

function newestSource() {
  const sources = readdirSync(join(ROOT, 'src'), { recursive: true, encoding: 'utf8' })
  const paths = [...sources.map((name) => join('src', name)), 'package-lock.json', THIS_FILE]
  return Math.max(...paths.map((path) => statSync(join(ROOT, path)).mtimeMs))
}

/**
 * @param {string} entry
 * @param {string} folder
 */
async function bundle(entry, folder) {
  const { build } = await import('vite')
  // Another process may be doing the same: each writes beside the place and moves in whole, or finds it taken.
  const outDir = `${folder}-${process.pid}`
  await build({
    root: ROOT,
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    // Packages too, so that only what is used of them is read at the start.
    ssr: { noExternal: true },
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
