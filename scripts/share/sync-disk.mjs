import { spawn } from 'node:child_process'

/** What came last is on the disk itself after so long, ms. */
const SYNC_MS = 1000

/**
 * Whether a nats-server acknowledges only what it has synced to the disk: from 2.10 on it can be told to.
 *
 * @param {string} version
 */
export function syncsItself(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number)
  return major > 2 || (major === 2 && minor >= 10)
}

/**
 * An older nats-server leaves what it has written to the system for two minutes, which a cut of power would take along. So the file system of
 * its folder is synced a second after something came.
 *
 * @param {import('@nats-io/transport-node').NatsConnection} connection of the box itself
 * @param {string} folder
 * @returns {() => void} how to stop
 */
export function syncWhatComes(connection, folder) {
  let hasCome = false
  let isSyncing = false
  connection.subscribe('plan.>', {
    callback: () => {
      hasCome = true
    },
  })
  const timer = setInterval(() => {
    if (!hasCome || isSyncing) return
    hasCome = false
    isSyncing = true
    const sync = spawn('sync', ['-f', folder], { stdio: 'ignore' })
    const end = () => {
      isSyncing = false
    }
    sync.on('error', end).on('exit', end)
  }, SYNC_MS)
  timer.unref()
  return () => clearInterval(timer)
}
