import { type DBSchema, openDB } from 'idb'

/** An elevation file kept in this browser, as it came. */
export interface GridFile {
  readonly key: string
  readonly name: string
  readonly bytes: Blob
}

interface GridsSchema extends DBSchema {
  files: { key: string; value: GridFile }
}

export type GridFiles = Awaited<ReturnType<typeof openGridFiles>>

/** Opens the browser's store of elevation files. Rejects where the browser keeps nothing, as some private windows do. */
export async function openGridFiles(name = 'fieldpair-ground') {
  const db = await openDB<GridsSchema>(name, 1, {
    upgrade: (fresh) => {
      fresh.createObjectStore('files', { keyPath: 'key' })
    },
  })
  return {
    list: (): Promise<GridFile[]> => db.getAll('files'),
    put: async (file: GridFile): Promise<void> => {
      await db.put('files', file)
    },
    remove: (key: string): Promise<void> => db.delete('files', key),
    close: () => db.close(),
  }
}
