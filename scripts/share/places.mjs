import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { writeWhole } from './whole-file.mjs'

/** What was carried over is written down no more often than this, ms: what is carried again after a stop harms nothing. */
const KEEP_MS = 1000

/**
 * A message by which a copy of a stream is known again.
 *
 * @typedef {object} Mark
 * @property {number} seq
 * @property {string} digest
 */

/**
 * How far one copy of a plan's stream was carried over to another.
 *
 * @typedef {object} Place
 * @property {string} from which copy
 * @property {string} to
 * @property {number} seq all up to this number is on the other's disk
 * @property {Mark} [here] of the last small message that was carried, where it came from
 * @property {Mark} [there] and where it went
 */

/**
 * How far each plan was carried each way, kept in the box's folder. Where the file is not there, or is no such file, all is carried anew: others
 * have it twice then, which changes nothing.
 *
 * @param {string} folder
 */
export function placesIn(folder) {
  const file = join(folder, 'forwarded.json')
  const places = new Map(Object.entries(read(file)))
  /** @type {NodeJS.Timeout | undefined} */
  let keeping
  const keep = () => {
    clearTimeout(keeping)
    keeping = undefined
    writeWhole(file, JSON.stringify(Object.fromEntries(places)))
  }
  return {
    /**
     * @param {string} name of plan and way
     * @returns {Place | undefined}
     */
    get: (name) => places.get(name),
    /**
     * @param {string} name
     * @param {Place} place
     */
    set: (name, place) => {
      places.set(name, place)
      keeping ??= setTimeout(keep, KEEP_MS)
    },
    keep: () => keeping && keep(),
  }
}

/**
 * @param {string} file
 * @returns {Record<string, Place>}
 */
function read(file) {
  if (!existsSync(file)) return {}
  try {
    const kept = Object.entries(JSON.parse(readFileSync(file, 'utf8')))
    return Object.fromEntries(kept.filter(([, place]) => Number.isSafeInteger(place?.seq)))
  } catch {
    return {}
  }
}
