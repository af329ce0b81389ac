import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** Folder of the project, whatever folder a command is started in. */
export const ROOT = dirname(dirname(fileURLToPath(import.meta.url)))

const OLDEST_NODE = [20, 19]

/** @param {string} path */
const packagesIn = (path) => JSON.parse(readFileSync(join(ROOT, path), 'utf8')).packages

/** True where every package that the lock file names is installed in that version. */
function installed() {
  const installedList = 'node_modules/.package-lock.json'
  if (!existsSync(join(ROOT, installedList))) return false
  const have = packagesIn(installedList)
  return Object.entries(packagesIn('package-lock.json')).every(
    ([path, entry]) => path === '' || entry.optional || have[path]?.version === entry.version,
  )
}

/**
 * Runs npm itself, with its output on standard error, so that standard output stays free.
 *
 * @param {string[]} args
 */
export function npm(args) {
  const script = process.env.npm_execpath
  const [command, before] = script ? [process.execPath, [script]] : ['npm', []]
  const shell = !script && process.platform === 'win32'
  return spawnSync(command, [...before, ...args], { cwd: ROOT, stdio: ['ignore', 2, 2], shell }).status === 0
}

/** Installs what is missing. Ends the program with a sentence where Node is too old or npm fails. */
export function ensureDependencies() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)
  const [oldestMajor = 0, oldestMinor = 0] = OLDEST_NODE
  if (major < oldestMajor || (major === oldestMajor && minor < oldestMinor)) {
    stop(`Fieldpair needs Node ${OLDEST_NODE.join('.')} or newer; this is Node ${process.versions.node}.`)
  }
  if (installed()) return
  console.error('Installing what is missing (npm ci) …')
  if (!npm(['ci', '--include=dev', '--no-fund', '--no-audit', '--loglevel=error']))
    stop('npm could not install the packages: its words above say why. A network is needed this once.')
}

/** @param {string} sentence */
export function stop(sentence) {
  console.error(sentence)
  process.exit(1)
}
