import { type DBSchema, openDB } from 'idb'
import type { MapFit, Mark } from '../geo/map-fit'
import type { MapKind } from '../jobs/maps/map-spec'

/** A map kept in this browser: the file as it came, and how it is shown. */
export interface MapFile {
  readonly key: string
  readonly name: string
  readonly kind: MapKind
  readonly bytes: Blob
  readonly isShown: boolean
  readonly opacity: number
  /** Rises from the lowest to the topmost. */
  readonly order: number
  readonly marks?: readonly Mark[]
  readonly fit?: MapFit
}

interface MapsSchema extends DBSchema {
  maps: { key: string; value: MapFile }
}

export type MapFiles = Awaited<ReturnType<typeof openMapFiles>>

/** Opens the browser's store of maps. Rejects where the browser keeps nothing, as some private windows do. */
export async function openMapFiles(name = 'fieldpair-maps') {
  const db = await openDB<MapsSchema>(name, 1, {
    upgrade: (fresh) => {
      fresh.createObjectStore('maps', { keyPath: 'key' })
    },
  })
  return {
    list: (): Promise<MapFile[]> => db.getAll('maps'),
    put: async (file: MapFile): Promise<void> => {
      await db.put('maps', file)
    },
    remove: (key: string): Promise<void> => db.delete('maps', key),
    close: () => db.close(),
  }
}
