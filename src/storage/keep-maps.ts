import { isolated } from '../isolated'
import { type MapFacts, mapKindOf } from '../jobs/maps/map-spec'
import type { MapsJobs } from '../jobs/maps/maps-jobs'
import type { Problem } from '../problem'
import type { Extent } from '../terrain/elevation-grid'
import { askToKeepForGood } from './keep-for-good'
import { type MapFile, type MapFiles, openMapFiles } from './map-files'
import { newKey } from './new-key'
import { onlineTiles, weighOnline } from './online-part'
import { underWatch, type WorkPlace } from './under-watch'

/** A map as the store has it: `state/maps-state.ts` says what each part means. */
interface ShownMap extends Omit<MapFile, 'bytes' | 'order' | 'marks' | 'fit'> {
  readonly sizeBytes: number
  readonly facts: MapFacts | undefined | null
  readonly isKept: boolean
  readonly fit: MapFile['fit']
}

interface Fitting {
  readonly key: string | undefined
  readonly name: string
  readonly picture: Blob
  readonly marks: NonNullable<MapFile['marks']>
}

/** The parts of the store that maps need. */
export interface MapsStore {
  readonly maps: { value: readonly ShownMap[] }
  readonly fitting: { value: Fitting | null }
  readonly work: WorkPlace
  readonly notice: { value: string }
  readonly refusedFile: { value: { readonly name: string; readonly problems: readonly Problem[] } | null }
}

/** A server of pictures, as the person names it. */
interface OnlineMap {
  readonly url: string
  readonly credit: string
}

const MAP_NOTICES = {
  full: (name: string) =>
    `There is no room on the disk to keep ${name}: it serves until this page is closed. Remove other maps, or free some room.`,
  nowhere: (name: string) => `This browser keeps no files here: ${name} serves until this page is closed.`,
} as const

/** The maps beneath the net: those kept in this browser, and those opened since. What is opened is kept only when it is asked for. */
export async function keepMaps(store: MapsStore, jobs: MapsJobs, name?: string) {
  const files: MapFiles | null = await openMapFiles(name).catch(() => null)
  const listed = ((await files?.list().catch(() => undefined)) ?? []).filter(isMap)
  let own: readonly MapFile[] = listed.sort((a, b) => a.order - b.order)
  const kept = new Set(own.map(({ key }) => key))
  const facts = new Map<string, MapFacts | null>()

  const publish = () => {
    jobs.setSpecs(own.map(({ bytes, ...spec }) => ({ ...spec, file: bytes })))
    store.maps.value = own.map(({ bytes, order, marks, fit, ...map }) => ({
      ...map,
      fit,
      sizeBytes: bytes.size,
      facts: facts.get(map.key),
      isKept: kept.has(map.key),
    }))
  }
  const learn = async (map: MapFile): Promise<readonly Problem[]> => {
    const result = await jobs.facts(map.key)
    facts.set(map.key, result?.ok ? result.value : null)
    publish()
    return result && !result.ok ? result.problems : []
  }
  /** Writes what is kept of a map; false where there is no room for it. */
  const write = async (map: MapFile): Promise<boolean> => {
    if (!files) {
      store.notice.value = MAP_NOTICES.nowhere(isolated(map.name))
      return false
    }
    try {
      await files.put(map)
      // A browser short of room drops what it was not asked to hold.
      void askToKeepForGood()
      return true
    } catch {
      store.notice.value = MAP_NOTICES.full(isolated(map.name))
      return false
    }
  }
  const replace = async (next: MapFile) => {
    own = own.map((each) => (each.key === next.key ? next : each))
    publish()
    if (kept.has(next.key)) await write(next)
  }
  const find = (key: string) => own.find((each) => each.key === key)
  /** Keeps a map as it is at the end of it: it may be changed or removed while it is being written. */
  const keep = async (key: string) => {
    let written: MapFile | undefined
    for (let map = find(key); map && map !== written; map = find(key)) {
      if (!(await write(map))) return
      written = map
    }
    if (!find(key)) return files?.remove(key)
    kept.add(key)
    publish()
  }
  const remove = async (key: string) => {
    own = own.filter((each) => each.key !== key)
    facts.delete(key)
    kept.delete(key)
    publish()
    await files?.remove(key)
  }
  /** Puts a map on top; one that cannot be read is taken away again, and the person told why. */
  const put = async (map: MapFile) => {
    own = [...own, map]
    publish()
    const problems = await learn(map)
    if (facts.get(map.key)) return
    await remove(map.key)
    store.refusedFile.value = { name: map.name, problems }
  }
  /** Keeps a part that was made here. */
  const keepMade = async (bytes: Blob, fileName: string) => {
    const made = { ...fresh(bytes, fileName), kind: 'mbtiles' as const }
    await put(made)
    if (facts.get(made.key)) await keep(made.key)
  }
  const fresh = (file: File | Blob, fileName: string) => ({
    key: newKey(),
    name: fileName,
    bytes: file,
    isShown: true,
    opacity: 1,
    order: Math.max(0, ...own.map(({ order }) => order)) + 1,
  })

  publish()
  void (async () => {
    for (const map of own) await learn(map)
  })()

  return {
    add: async (added: readonly File[]) => {
      for (const file of added) {
        const kind = mapKindOf(file.name)
        if (kind === 'picture')
          store.fitting.value = { key: undefined, name: file.name, picture: file, marks: [] }
        else if (kind) await put({ ...fresh(file, file.name), kind })
      }
    },
    remove,
    change: (key: string, change: Partial<Pick<MapFile, 'isShown' | 'opacity'>>) => {
      const map = find(key)
      if (map) void replace({ ...map, ...change })
    },
    move: (key: string, by: 1 | -1) => {
      const at = own.findIndex((each) => each.key === key)
      const other = own[at + by]
      const map = own[at]
      if (!map || !other) return
      own = own
        .map((each, i) => (i === at ? other : i === at + by ? map : each))
        .map((each, order) => ({ ...each, order }))
      publish()
      for (const each of own) if (kept.has(each.key)) void write(each)
    },
    keep,
    refit: async (key: string) => {
      const map = find(key)
      if (map) store.fitting.value = { key, name: map.name, picture: map.bytes, marks: map.marks ?? [] }
    },
    fitted: async ({ key, name: fileName, picture, marks }: Fitting, fit: NonNullable<MapFile['fit']>) => {
      store.fitting.value = null
      const before = key === undefined ? undefined : find(key)
      if (!before) return put({ ...fresh(picture, fileName), kind: 'picture', marks, fit })
      await replace({ ...before, marks, fit })
      await learn({ ...before, marks, fit })
    },
    keepPart: async (key: string, extent: Extent, maxZoom: number) => {
      const map = find(key)
      if (!map) return
      const part = await underWatch(store.work, `Taking a part of ${isolated(map.name)}`, () =>
        jobs.part(key, extent, maxZoom),
      )
      if (part && !part.ok) store.notice.value = part.problems[0]!.message
      if (!part?.ok) return
      await keepMade(part.value, `${map.name.replace(/\.\w+$/, '')}, part.mbtiles`)
    },
    keepOnline: async ({ url, credit }: OnlineMap, extent: Extent, zooms: readonly number[]) => {
      const title = new URL(url.replaceAll(/[{}]/g, '')).hostname
      const part = await underWatch(
        store.work,
        `Taking the part of ${title} around the plan`,
        async (watch) => {
          const tiles = await onlineTiles(url, extent, zooms, {}, watch)
          return tiles.ok ? jobs.pack({ tiles: tiles.value, title, credit, extent }) : tiles
        },
      )
      if (part && !part.ok) store.notice.value = part.problems[0]!.message
      if (part?.ok) await keepMade(part.value, `${title}, part.mbtiles`)
    },
    weighOnline: ({ url }: OnlineMap, extent: Extent) =>
      underWatch(store.work, 'Looking at the tiles around the plan', (watch) =>
        weighOnline(url, extent, {}, watch),
      ),
    strip: (extent: Extent, width: number, height: number) => {
      const layers = own
        .filter(({ key, isShown }) => isShown && facts.get(key))
        .map(({ key, opacity }) => ({ key, opacity }))
      return jobs.strip({ layers, extent, width, height })
    },
    tile: jobs.tile,
    weigh: jobs.weigh,
  }
}

/** Whether a record holds what a map can be made of: it may be damaged. */
const isMap = ({ key, name, bytes, kind }: Partial<MapFile>): boolean =>
  typeof key === 'string' && typeof name === 'string' && typeof kind === 'string' && bytes instanceof Blob
