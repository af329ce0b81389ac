import { spawn, spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { join } from 'node:path'
import { installWithApt } from '../browser.mjs'
import { stop } from '../dependencies.mjs'

/** A server that is asked to end has so long for it, ms. */
const PATIENCE_MS = 5000

const USUAL_PLACES = ['/usr/sbin/nats-server', '/usr/bin/nats-server', '/usr/local/bin/nats-server']

/** @returns {string | undefined} path of the nats-server that is installed here */
export function findNatsServer() {
  const named = process.env.NATS_SERVER
  if (named) return existsSync(named) ? named : undefined
  return USUAL_PLACES.find((path) => existsSync(path))
}

/** @returns {string | undefined} path of a nats-server that is now installed */
export function installNatsServer() {
  installWithApt(['nats-server'])
  return findNatsServer()
}

/**
 * Path of nats-server, which is installed where it is missing; ends the program with a sentence where it cannot be.
 *
 * @param {string} what needs it
 * @returns {string}
 */
export function neededNatsServer(what) {
  return (
    findNatsServer() ??
    installNatsServer() ??
    stop(
      `${what} needs nats-server (Debian and Ubuntu: apt-get install nats-server; else nats.io), and it could not be installed here. Install it, or name it by NATS_SERVER=/path.`,
    )
  )
}

/** @param {string} path */
export function versionOf(path) {
  const told = spawnSync(path, ['--version'], { encoding: 'utf8' }).stdout ?? ''
  return /v?(\d+\.\d+\.\d+)/.exec(told)?.[1] ?? '0.0.0'
}

/** A port of this machine that nobody uses now. */
export function freePort() {
  return new Promise((resolve, reject) => {
    const probe = createServer()
    probe.once('error', reject)
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address()
      probe.close(() => resolve(typeof address === 'object' && address ? address.port : 0))
    })
  })
}

/**
 * Ends the nats-server that a box which was killed has left on a folder: two on one folder would spoil what is kept there.
 *
 * @param {string} folder
 */
export async function endOrphan(folder) {
  const file = join(folder, 'nats.pid')
  const pid = existsSync(file) ? Number(readFileSync(file, 'utf8')) : 0
  const isOurs = () =>
    (spawnSync('ps', ['-p', String(pid), '-o', 'command='], { encoding: 'utf8' }).stdout ?? '').includes(
      join(folder, 'nats.conf'),
    )
  if (!(pid > 0 && isOurs())) return
  const end = (/** @type {NodeJS.Signals} */ signal) => {
    try {
      process.kill(pid, signal)
    } catch {
      // It has ended by itself.
    }
  }
  end('SIGTERM')
  for (const until = Date.now() + PATIENCE_MS; isOurs(); ) {
    await new Promise((done) => setTimeout(done, 50))
    if (Date.now() > until) end('SIGKILL')
  }
}

/**
 * Starts nats-server, and starts it again when it dies, until it is stopped.
 *
 * @param {string} path
 * @param {string} config file
 * @param {(sentence: string) => void} tell
 */
export function keepRunning(path, config, tell) {
  let isStopped = false
  /** @type {import('node:child_process').ChildProcess} */
  let child
  const start = () => {
    child = spawn(path, ['-c', config], { stdio: ['ignore', 'ignore', 'pipe'] })
    let last = ''
    child.stderr?.on('data', (/** @type {Buffer} */ text) => {
      last = String(text).trim().split('\n').at(-1) ?? ''
    })
    child.on('exit', () => {
      if (isStopped) return
      tell(`nats-server has stopped (${last.slice(-200)}); it is started again.`)
      setTimeout(() => !isStopped && start(), 500)
    })
  }
  start()
  return {
    pid: () => child.pid,
    reload: () => child.kill('SIGHUP'),
    /** One whose write has failed does not always end when it is asked to. */
    restart: () => child.kill('SIGKILL'),
    /** @returns {Promise<void>} */
    stop: () => {
      isStopped = true
      return new Promise((resolve) => {
        if (child.exitCode !== null || child.signalCode !== null) return resolve()
        // One whose disk was full does not always end when it is asked to.
        const force = setTimeout(() => child.kill('SIGKILL'), PATIENCE_MS)
        child.once('exit', () => {
          clearTimeout(force)
          resolve()
        })
        child.kill('SIGTERM')
      })
    },
  }
}
