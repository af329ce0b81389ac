import { renameSync, writeFileSync } from 'node:fs'

/**
 * A file is there whole or as it was before.
 *
 * @param {string} path
 * @param {string} text
 */
export function writeWhole(path, text) {
  writeFileSync(`${path}.new`, text, { mode: 0o600 })
  renameSync(`${path}.new`, path)
}
