import { bad, ok, type Result } from '../../problem'
import type { PromptFile } from './prompt-file'
import { PLACE, type Sqlite, sqliteOf } from './sqlite-library'

type Value = string | number | bigint | Uint8Array | null
type Row = readonly Value[]

/** A database that is only read. */
export interface SqliteFile {
  /** All rows of a question. Throws where the file is broken, or the answer takes longer than so many ms. */
  readonly rows: (sql: string, values?: readonly (string | number)[], longestMs?: number) => readonly Row[]
  readonly close: () => void
}

/** No row of a map or a list of places is longer. */
const MOST_VALUE_BYTES = 32e6
const MOST_HEAP_BYTES = 256e6
/** A question of ours takes milliseconds; a view made to count for ever is ended after so long, ms. */
const LONGEST_MS = 1500
const STEPS_BETWEEN_LOOKS = 100_000
const MAGIC = 'SQLite format 3\0'

/**
 * Opens an SQLite database without taking it into memory: pages are read as they are asked for. It is opened as if nobody else could write
 * it, so that neither journal nor log is looked for. What its makers wrote into views and triggers is not trusted.
 *
 * Source: SQLite, Database File Format; Defense Against The Dark Arts (sqlite.org/security.html).
 */
export async function openSqlite(
  file: PromptFile,
  wasm: () => Promise<ArrayBuffer>,
): Promise<Result<SqliteFile>> {
  const refused = bad({
    code: 'no-sqlite',
    at: file.name,
    message: 'The file is no database of SQLite, or is broken: copy or download it again.',
  })
  const head = file.readNow(0, Math.min(16, file.sizeBytes))
  if (new TextDecoder('latin1').decode(head) !== MAGIC) return refused
  const sqlite = await sqliteOf(wasm)
  const { database, forget } = openOn(sqlite, file)
  if (!database) return refused
  const { capi } = sqlite
  const read: SqliteFile['rows'] = (sql, values = [], longestMs = LONGEST_MS) => {
    const endMs = Date.now() + longestMs
    capi.sqlite3_progress_handler(database, STEPS_BETWEEN_LOOKS, () => (Date.now() > endMs ? 1 : 0), 0)
    return database.selectArrays(sql, values.length > 0 ? [...values] : undefined) as readonly Row[]
  }
  try {
    capi.sqlite3_limit(database, capi.SQLITE_LIMIT_LENGTH, MOST_VALUE_BYTES)
    for (const setting of ['trusted_schema = OFF', 'query_only = ON', `hard_heap_limit = ${MOST_HEAP_BYTES}`])
      read(`PRAGMA ${setting}`)
    read('SELECT count(*) FROM sqlite_schema')
  } catch {
    database.close()
    forget()
    return refused
  }
  return ok({
    rows: read,
    close: () => {
      database.close()
      forget()
    },
  })
}

function openOn(sqlite: Sqlite, file: PromptFile) {
  const path = sqlite.lay(file)
  const forget = () => sqlite.take(path)
  try {
    const filename = `file:${path}?vfs=${PLACE}&immutable=1`
    return { database: new sqlite.oo1.DB({ filename, flags: 'r' }), forget }
  } catch {
    forget()
    return { database: undefined, forget }
  }
}
