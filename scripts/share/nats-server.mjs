import { spawn, spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { createServer } from 'node:net'
import { installWithApt } from '../browser.mjs'

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
