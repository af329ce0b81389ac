import { statfsSync } from 'node:fs'

/** A disk with less room than this is full: nats-server stores nothing once a write has failed, bytes. */
const LEAST_BYTES = 4 * 1024 * 1024
const LOOK_MS = 1000

/**
 * Watches the room on the disk of a folder. A nats-server whose write has failed takes nothing any more, also when there is room again: then
 * it has to be started anew.
 *
 * @param {string} folder
 * @param {(sentence: string) => void} tell
 * @param {() => void} onRoomAgain
 */
export function watchDisk(folder, tell, onRoomAgain) {
  let isFull = false
  const look = () => {
    const { bavail, bsize } = statfsSync(folder)
    const isFullNow = bavail * bsize < LEAST_BYTES
    if (isFullNow && !isFull)
      tell(`There is no room left on the disk of ${folder}: nothing is taken until there is.`)
    if (!isFullNow && isFull) {
      tell('There is room on the disk again.')
      onRoomAgain()
    }
    isFull = isFullNow
  }
  const timer = setInterval(look, LOOK_MS)
  timer.unref()
  return { isFull: () => isFull, stop: () => clearInterval(timer) }
}
