import type { PromptFile } from './prompt-file'

type Package = Awaited<ReturnType<typeof import('@sqlite.org/sqlite-wasm').default>>

/** A record of C, whose members have a `$` before their names: the package's types have them without. */
interface Struct {
  readonly pointer: number
  dispose(): void
  [member: `$${string}`]: unknown
}
type StructClass = (new (pointer?: unknown) => Struct) & { readonly structInfo: { readonly sizeof: number } }

/** The package, with its records as they are. */
interface Library extends Pick<Package, 'oo1' | 'wasm' | 'vfs' | 'config'> {
  readonly capi: Omit<Package['capi'], 'sqlite3_vfs' | 'sqlite3_file' | 'sqlite3_io_methods'> &
    Readonly<Record<'sqlite3_vfs' | 'sqlite3_file' | 'sqlite3_io_methods', StructClass>>
}

/** The library, and a place where files are laid for it to read. */
export interface Sqlite extends Pick<Library, 'capi' | 'oo1'> {
  /** Lays a file there, and gives its path. */
  readonly lay: (file: PromptFile) => string
  readonly take: (path: string) => void
}

export const PLACE = 'files-at-hand'
let loaded: Promise<Sqlite> | undefined

/** The library, loaded when it is first wanted. */
export function sqliteOf(wasm: () => Promise<ArrayBuffer>): Promise<Sqlite> {
  loaded ??= load(wasm)
  return loaded
}

async function load(wasm: () => Promise<ArrayBuffer>): Promise<Sqlite> {
  const { default: start } = await import('@sqlite.org/sqlite-wasm')
  const quiet = () => undefined
  // Its types do not know these: Emscripten does.
  const settings = { wasmBinary: await wasm(), print: quiet, printErr: quiet }
  const library = await (start as unknown as (settings: object) => Promise<Library>)(settings)
  // What a file is refused for is told to the person, not to the console.
  Object.assign(library.config, { error: quiet, warn: quiet, log: quiet, debug: quiet })
  return { capi: library.capi, oo1: library.oo1, ...placeFor(library) }
}

/** A place of our own in SQLite's terms, a VFS, which reads and does nothing else. Source: sqlite.org/c3ref/vfs.html. */
function placeFor({ capi, wasm, vfs }: Library): Pick<Sqlite, 'lay' | 'take'> {
  const laid = new Map<string, PromptFile>()
  /** Files that SQLite has open, by where it keeps its record of each. */
  const open = new Map<unknown, PromptFile>()
  const done = () => 0
  const forbidden = () => capi.SQLITE_READONLY
  const file = new capi.sqlite3_io_methods()
  file.$iVersion = 1
  const place = new capi.sqlite3_vfs()
  const usual = new capi.sqlite3_vfs(capi.sqlite3_vfs_find(null as never))
  place.$iVersion = 1
  place.$szOsFile = capi.sqlite3_file.structInfo.sizeof
  place.$mxPathname = 64
  place.$xRandomness = usual.$xRandomness
  place.$xSleep = usual.$xSleep
  place.$xCurrentTime = usual.$xCurrentTime
  usual.dispose()
  vfs.installVfs({
    io: {
      struct: file,
      methods: {
        xClose: (handle: unknown) => {
          open.delete(handle)
          return 0
        },
        xRead: (handle: unknown, into: number, length: number, offset: bigint) => {
          try {
            const bytes = open.get(handle)!.readNow(Number(offset), length)
            wasm.heap8u().set(bytes, Number(into))
            if (bytes.length === length) return 0
            wasm.heap8u().fill(0, Number(into) + bytes.length, Number(into) + length)
            return capi.SQLITE_IOERR_SHORT_READ
          } catch {
            return capi.SQLITE_IOERR_READ
          }
        },
        xFileSize: (handle: unknown, size: number) => {
          wasm.poke(size as never, open.get(handle)!.sizeBytes, 'i64')
          return 0
        },
        xWrite: forbidden,
        xTruncate: forbidden,
        xSync: done,
        xLock: done,
        xUnlock: done,
        xCheckReservedLock: (_handle: unknown, isHeld: number) => {
          wasm.poke(isHeld as never, 0, 'i32')
          return 0
        },
        xFileControl: () => capi.SQLITE_NOTFOUND,
        xSectorSize: () => 4096,
        xDeviceCharacteristics: () => capi.SQLITE_IOCAP_IMMUTABLE,
      },
    },
    vfs: {
      struct: place,
      name: PLACE,
      methods: {
        xOpen: (_place: unknown, name: number, handle: unknown, _flags: number, outFlags: number) => {
          const found = laid.get(wasm.cstrToJs(name as never) ?? '')
          if (!found) return capi.SQLITE_CANTOPEN
          open.set(handle, found)
          const record = new capi.sqlite3_file(handle)
          record.$pMethods = file.pointer
          record.dispose()
          if (outFlags) wasm.poke(outFlags as never, capi.SQLITE_OPEN_READONLY, 'i32')
          return 0
        },
        xDelete: forbidden,
        xAccess: (_place: unknown, _name: number, _flags: number, isThere: number) => {
          wasm.poke(isThere as never, 0, 'i32')
          return 0
        },
        xFullPathname: (_place: unknown, name: number, room: number, into: number) =>
          wasm.cstrncpy(into as never, name as never, room) < room ? 0 : capi.SQLITE_CANTOPEN,
        xGetLastError: done,
      },
    },
  } as never)

  let count = 0
  return {
    lay: (each) => {
      const path = `/file${++count}`
      laid.set(path, each)
      return path
    },
    take: (path) => {
      laid.delete(path)
    },
  }
}
