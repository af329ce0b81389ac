import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'

/** The wasm of SQLite, as Node finds it. */
export const sqliteWasm = async (): Promise<ArrayBuffer> =>
  new Uint8Array(readFileSync(createRequire(import.meta.url).resolve('@sqlite.org/sqlite-wasm/sqlite3.wasm')))
    .buffer
