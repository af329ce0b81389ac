import { formatPlan } from '../files/format-plan'
import { isolated } from '../isolated'
import type { Plan } from '../plan/plan'
import type { Problem } from '../problem'
import type { ElevationGrid } from '../terrain/elevation-grid'
import type { KeptGrid } from '../terrain/kept-grid'
import type { ElevationStore } from './take-elevations'

/** The parts of the store that a file needs: where a plan goes, and where its faults go. */
export interface FileStore extends ElevationStore {
  readonly plan: { peek(): Plan }
  readonly open: (plan: Plan) => void
  readonly refusedFile: { value: { readonly name: string; readonly problems: readonly Problem[] } | null }
  readonly notice: { value: string }
  /** The plan as a file last took it. */
  readonly inFile: { value: Plan | null }
  /** Where several change the plan: its file takes their journal along, and takes in one that another file has brought. */
  readonly sharing?: {
    peek(): { readonly filePlan: () => Plan; readonly takeFile: (plan: Plan) => boolean } | null
  }
  /** The journal of a plan that nobody shares. */
  readonly ownJournal?: {
    peek(): {
      readonly filePlan: () => Promise<Plan>
      readonly takeFile: (plan: Plan) => Promise<boolean>
    } | null
  }
  /** The elevations at hand. */
  readonly grids: { peek(): readonly KeptGrid[] }
  /** What of them is read for this plan. */
  readonly ground: { peek(): { readonly grids: readonly ElevationGrid[] } | undefined }
}

/** More cells than these are better taken along as the files that they came in. */
const MOST_CARRIED_CELLS = 6e6

/** Of the File System Access interface only what is used here; not every browser has it. */
interface SavePicker {
  showSaveFilePicker?: (options: { suggestedName: string }) => Promise<FileSystemFileHandle>
}

/** Elevations that somebody brought: neither the demo's own nor a server's. */
export const broughtElevations = (grids: readonly KeptGrid[]): readonly KeptGrid[] =>
  grids.filter(({ state, key }) => state === 'read' && key !== 'demo' && key !== 'online')

/** What of them is read for this plan, to be taken along. */
function gridsToCarry({ grids, ground }: FileStore): readonly ElevationGrid[] {
  const names = broughtElevations(grids.peek()).map(({ name }) => name)
  return ground.peek()?.grids.filter(({ name }) => names.some((each) => each.startsWith(name))) ?? []
}

/** Saves the plan where the person says, or among the downloads where the browser has no such dialog; with its elevations in it, if so wished. */
export async function savePlanFile(store: FileStore, withElevations = false): Promise<void> {
  const plan = store.plan.peek()
  const name = planFileName(plan.title)
  const grids = withElevations ? gridsToCarry(store) : []
  if (grids.reduce((sum, { heights }) => sum + heights.length, 0) > MOST_CARRIED_CELLS) {
    store.notice.value =
      'These elevations are too large for a plan file. Take the elevation files themselves along.'
    return
  }
  const textOfFile = async () => {
    const whole = store.sharing?.peek()?.filePlan() ?? (await store.ownJournal?.peek()?.filePlan()) ?? plan
    if (grids.length === 0) return formatPlan(whole)
    return (await import('../files/carried-elevations')).formatWithElevations(whole, grids)
  }
  const picker = (window as SavePicker).showSaveFilePicker
  if (!picker) {
    download(name, await textOfFile())
    tellSaved(store, plan, grids.length > 0)
    return
  }
  try {
    // Asked at once: a browser allows it only right after a press.
    const handle = await picker.call(window, { suggestedName: name })
    const file = await handle.createWritable()
    await file.write(await textOfFile())
    await file.close()
    tellSaved(store, plan, grids.length > 0)
  } catch (error) {
    if (error instanceof Error && error.name === 'AbortError') return
    store.notice.value = `${name} could not be written there. Choose another place, or free some room.`
  }
}

/** Without its elevations whoever opens a plan elsewhere has other lengths. */
function tellSaved(store: FileStore, plan: Plan, areElevationsIn: boolean): void {
  store.inFile.value = plan
  const brought = broughtElevations(store.grids.peek())
  if (brought.length === 0) return
  const names = brought.map((grid) => isolated(grid.name)).join(', ')
  store.notice.value = areElevationsIn
    ? `The plan is saved with the elevations around it, from ${names}. Whoever opens it elsewhere reads the same lengths.`
    : `The plan is saved; its elevations stay behind. Whoever opens it elsewhere also needs ${names}, or reads other lengths. “Save with its elevations…” under Plans takes them along.`
}

/** `NAME.plan.geojson`, without what some file system refuses in a name. */
export function planFileName(title: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what must go
  const safe = title.replace(/[\u0000-\u001f\\/:*?"<>|]+/g, '-').replace(/^[.\s-]+|[.\s-]+$/g, '')
  return `${safe.slice(0, 80) || 'plan'}.plan.geojson`
}

/** Puts a text, or the bytes of a file, among the downloads. */
export function download(name: string, content: string | Uint8Array, type = 'application/geo+json'): void {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(new Blob([content as BlobPart], { type }))
  link.download = name
  link.click()
  // The download has begun only after the click has been handled.
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000)
}
