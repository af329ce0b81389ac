import type { Position } from '../geo/position'
import { isolated } from '../isolated'
import type { TerrainJobs } from '../jobs/terrain-jobs'
import type { Plan } from '../plan/plan'
import type { Problem } from '../problem'
import type { Extent } from '../terrain/elevation-grid'
import { extentOf } from '../terrain/grid-extent'
import { type GridGround, groundFromGrids } from '../terrain/ground-from-grids'
import type { KeptGrid } from '../terrain/kept-grid'
import { planExtent } from '../terrain/plan-extent'
import { readyForGrids } from '../terrain/ready-grids'
import { type GridFile, type GridFiles, openGridFiles } from './grid-files'
import { covers, entryOf, type GridSource, middleOf, type ReadSource, readSource } from './grid-source'
import { askToKeepForGood } from './keep-for-good'
import { newKey } from './new-key'
import { underWatch, type WorkPlace } from './under-watch'

/** The parts of the store that the ground needs. */
export interface GroundStore {
  readonly settled: { subscribe(listener: (plan: Plan) => void): () => void; peek(): Plan }
  /** Another value means another document. */
  readonly opened: { peek(): unknown }
  readonly ground: { value: GridGround | undefined }
  readonly grids: { value: readonly KeptGrid[] }
  readonly work: WorkPlace
  readonly notice: { value: string }
  readonly refusedFile: { value: { readonly name: string; readonly problems: readonly Problem[] } | null }
}

/** The elevations at hand: files kept in this browser, and what else there is where the plan lies. */
export interface GroundKeeper {
  readonly add: (files: readonly File[]) => Promise<void>
  readonly remove: (key: string) => Promise<void>
  /** The middle of a file, wherever it lies; undefined where that cannot be read, or was stopped. */
  readonly find: (key: string) => Promise<Position | undefined>
  readonly stop: () => void
}

export const GROUND_NOTICES = {
  elsewhere: (name: string) =>
    `${name} lies elsewhere: it has no heights where this plan is. It is in the list under “Do we know the ground?”, with a button that goes there.`,
  full: (name: string) =>
    `There is no room on the disk to keep ${name}: it serves until this page is closed. Remove other elevations, or free some room.`,
  nowhere: (name: string) => `This browser keeps no files here: ${name} serves until this page is closed.`,
} as const

/** Whether a record holds what a file can be made of: it may be damaged. */
const isFile = ({ bytes }: Partial<GridFile>): boolean => typeof bytes === 'object' && bytes !== null

/**
 * Gives the plan its ground: from every elevation file kept in this browser, and from `others` where they know it. Of each only
 * the window around the plan is read, off the main thread, and read anew when the plan outgrows it.
 *
 * @param others further sources for a plan, such as the demo's own ground, or a server
 */
export async function keepGround(
  store: GroundStore,
  jobs: Pick<TerrainJobs, 'readGrid'>,
  others: readonly ((plan: Plan) => Promise<readonly GridSource[]>)[],
  name?: string,
): Promise<GroundKeeper> {
  const files: GridFiles | null = await openGridFiles(name).catch(() => null)
  const ofFile = (key: string, file: File, isKept: boolean): GridSource => ({
    key,
    name: file.name,
    isKept,
    sizeBytes: () => file.size,
    read: async (extent, watch) => {
      const result = await jobs.readGrid(file, extent, watch)
      if (result?.ok && result.value) await readyForGrids([result.value])
      return result
    },
  })
  // One that the browser cannot read must not take the others, or the start, with it.
  const listed = (await files?.list().catch(() => undefined)) ?? []
  let own: readonly GridSource[] = listed
    .filter(isFile)
    .map(({ key, name: fileName, bytes }) => ofFile(key, new File([bytes], fileName), true))
  let read = new Map<GridSource, ReadSource>()
  let published: readonly unknown[] = []

  const publish = () => {
    const all = [...read.values()]
    store.grids.value = all.map(entryOf)
    const grids = all.flatMap(({ grid }) => grid ?? [])
    const isKnown = grids.length > 0 === (store.ground.value !== undefined)
    if (isKnown && grids.length === published.length && grids.every((grid, i) => grid === published[i]))
      return
    published = grids
    store.ground.value = grids.length > 0 ? groundFromGrids(grids) : undefined
  }

  const isFresh = (before: ReadSource | undefined, extent: Extent | undefined) =>
    before !== undefined && (extent ? before.extent !== null && covers(before.extent, extent) : true)

  /** Ends the reading for a plan that another takes the place of. */
  let leaving = new AbortController()
  /** Reads what is wanting for the plan as it is now. */
  const refresh = async () => {
    const plan = store.settled.peek()
    const opened = store.opened.peek()
    const gone = leaving.signal
    const extent = planExtent(plan)
    const sources = [...(await Promise.all(others.map((find) => find(plan)))).flat(), ...own]
    read = new Map([...read].filter(([source]) => sources.includes(source)))
    for (const source of sources) {
      const before = read.get(source)
      if (isFresh(before, extent)) continue
      const result = await underWatch(
        store.work,
        `Reading heights from ${isolated(source.name)}`,
        (watch) => readSource(source, extent, watch),
        gone,
      )
      // Another plan has come: its own reading waits its turn.
      if (store.opened.peek() !== opened) return
      // Stopped: what is known of it stays, and it is not read again before the plan has grown further.
      const kept = { source, grid: before?.grid ?? null, extent: extent ?? null }
      if (!result) read.set(source, { ...kept, state: before?.state ?? 'waiting' })
      else if (result.ok) read.set(source, result.value)
      else {
        read.set(source, { ...kept, grid: null, state: 'broken' })
        store.notice.value = result.problems[0]?.message ?? ''
      }
      // The next one may take long: what there is serves meanwhile.
      publish()
    }
    publish()
  }

  let turn: Promise<void> = Promise.resolve()
  const inTurn = (act: () => Promise<void>): Promise<void> => {
    turn = turn.then(act).catch((error: unknown) => {
      store.notice.value = `The ground could not be read (${error instanceof Error ? error.message : String(error)}).`
    })
    return turn
  }

  const keepFile = async (key: string, file: File): Promise<boolean> => {
    if (!files) {
      store.notice.value = GROUND_NOTICES.nowhere(isolated(file.name))
      return false
    }
    try {
      await files.put({ key, name: file.name, bytes: file })
      // A browser short of room drops what it was not asked to hold.
      void askToKeepForGood()
      return true
    } catch {
      store.notice.value = GROUND_NOTICES.full(isolated(file.name))
      return false
    }
  }

  const addOne = async (file: File) => {
    const key = newKey()
    const tried = ofFile(key, file, true)
    const extent = planExtent(store.settled.peek())
    const result = await underWatch(store.work, `Reading heights from ${isolated(file.name)}`, (watch) =>
      readSource(tried, extent, watch),
    )
    if (!result) return
    if (!result.ok) {
      store.refusedFile.value = { name: file.name, problems: result.problems }
      return
    }
    const same = own.filter((each) => each.name === file.name && each.sizeBytes() === file.size)
    const source = (await keepFile(key, file)) ? tried : ofFile(key, file, false)
    for (const each of same) await files?.remove(each.key)
    own = [...own.filter((each) => !same.includes(each)), source]
    read = new Map([...read].filter(([each]) => !same.includes(each)))
    read.set(source, { ...result.value, source })
    publish()
    if (result.value.state === 'elsewhere') store.notice.value = GROUND_NOTICES.elsewhere(isolated(file.name))
  }

  const find = async (key: string): Promise<Position | undefined> => {
    const source = own.find((each) => each.key === key)
    if (!source) return undefined
    const found = await underWatch(store.work, `Looking where ${isolated(source.name)} lies`, (watch) =>
      source.read(undefined, watch),
    )
    if (found?.ok) return found.value ? middleOf(extentOf(found.value)) : undefined
    if (found) store.notice.value = found.problems[0]?.message ?? ''
    return undefined
  }

  let seen: string | null = null
  let openedBefore = store.opened.peek()
  const unsubscribe = store.settled.subscribe((plan) => {
    if (store.opened.peek() !== openedBefore) {
      openedBefore = store.opened.peek()
      leaving.abort()
      leaving = new AbortController()
      // It may lie where the last one did, whose reading has just been ended.
      seen = null
    }
    const extent = JSON.stringify(planExtent(plan) ?? 'nowhere')
    if (extent === seen) return
    seen = extent
    void inTurn(refresh)
  })

  return {
    add: async (added) => {
      for (const file of added) await inTurn(() => addOne(file))
    },
    remove: (key) =>
      inTurn(async () => {
        own = own.filter((each) => each.key !== key)
        read = new Map([...read].filter(([each]) => each.key !== key))
        await files?.remove(key)
        publish()
      }),
    find,
    stop: () => {
      unsubscribe()
      leaving.abort()
      files?.close()
    },
  }
}
