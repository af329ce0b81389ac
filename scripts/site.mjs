import { spawn } from 'node:child_process'
import { createHash } from 'node:crypto'
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
} from 'node:fs'
import { join } from 'node:path'
import { ROOT } from './dependencies.mjs'

const CACHE = join(ROOT, 'node_modules/.cache/fieldpair')
/** All that the build reads; packages follow from the lock. */
const SOURCES = [
  ...['src', 'public', 'vite', 'index.html', 'vite.config.ts', 'tsconfig.json', 'scripts/build.mjs'],
  ...['package.json', 'package-lock.json'],
]
/** Other runs may still visit a site of yesterday's sources. */
const KEPT_MS = 24 * 60 * 60 * 1000

/**
 * Folder of the site as people get it, built where no build of the same sources is kept. Nobody writes into it.
 *
 * @returns {Promise<string>}
 */
export async function builtSite() {
  const site = join(CACHE, `site-${sourcesHash()}`)
  if (existsSync(site)) {
    const now = new Date()
    utimesSync(site, now, now)
    return site
  }
  // Another process may be doing the same: each builds beside the place and moves in whole, or finds it taken.
  const folder = `${site}-${process.pid}`
  await build(folder)
  removeOld()
  try {
    renameSync(folder, site)
  } catch {
    rmSync(folder, { recursive: true, force: true })
  }
  return site
}

function sourcesHash() {
  const files = SOURCES.flatMap((source) =>
    statSync(join(ROOT, source)).isFile()
      ? [source]
      : readdirSync(join(ROOT, source), { recursive: true, encoding: 'utf8' })
          .map((name) => join(source, name))
          .filter((path) => statSync(join(ROOT, path)).isFile()),
  )
  const hash = createHash('sha256')
  for (const path of files.sort()) hash.update(`\0${path}\0`).update(readFileSync(join(ROOT, path)))
  return hash.digest('hex').slice(0, 16)
}

/**
 * In a process of its own, since under a test runner a build is not the one that people get.
 *
 * @param {string} folder
 * @returns {Promise<void>}
 */
function build(folder) {
  mkdirSync(CACHE, { recursive: true })
  const args = ['scripts/build.mjs', '--out', folder]
  const env = { ...process.env, NODE_ENV: 'production' }
  return new Promise((resolve, reject) => {
    spawn(process.execPath, args, { cwd: ROOT, env, stdio: ['ignore', 'ignore', 'inherit'] })
      .on('error', reject)
      .on('close', (code) => (code === 0 ? resolve() : reject(new Error('The site could not be built.'))))
  })
}

function removeOld() {
  for (const name of readdirSync(CACHE).filter((each) => each.startsWith('site-'))) {
    const path = join(CACHE, name)
    if (Date.now() - statSync(path).mtimeMs > KEPT_MS) rmSync(path, { recursive: true, force: true })
  }
}
