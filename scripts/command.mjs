import { readFile, writeFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { isAbsolute, join } from 'node:path'
import { ensureDependencies } from './dependencies.mjs'

// npm runs a script in the project's folder; paths are meant from where the person stands.
const STANDING_IN = process.env.INIT_CWD ?? process.cwd()
/** @param {string} path */
const placeOf = (path) => (isAbsolute(path) ? path : join(STANDING_IN, path))

// Whoever reads may have seen enough (`| head`). That is no fault of the command, which still writes its files and ends as it would.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (/** @type {NodeJS.ErrnoException} */ error) => {
    if (error.code !== 'EPIPE') throw error
  })
}

/**
 * Runs one of the program's commands on what stands on the command line.
 *
 * @param {string} entry module of src/ that has it
 * @param {string} name the function
 */
export async function runCommand(entry, name) {
  ensureDependencies()
  const { load } = await import('./bundle.mjs')
  const module = await load(entry)
  process.exitCode = await module[name](process.argv.slice(2), {
    readBytes: (/** @type {string} */ path) => readFile(placeOf(path)),
    write: (/** @type {string} */ path, /** @type {string | Uint8Array} */ content) =>
      writeFile(placeOf(path), content),
    sqliteWasm: async () => {
      const path = createRequire(import.meta.url).resolve('@sqlite.org/sqlite-wasm/sqlite3.wasm')
      return new Uint8Array(await readFile(path)).buffer
    },
    out: (/** @type {string} */ text) => process.stdout.write(text),
    err: (/** @type {string} */ text) => process.stderr.write(text),
  })
}
