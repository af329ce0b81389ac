import { formatPlan } from '../files/format-plan'
import { parsePlanBytes } from '../files/parse-plan'
import { isolated } from '../isolated'
import type { Plan } from '../plan/plan'
import type { Problem } from '../problem'
import type { KeptGrid } from '../terrain/kept-grid'

/** The parts of the store that a file needs: where a plan goes, and where its faults go. */
export interface FileStore {
  readonly plan: { peek(): Plan }
  readonly open: (plan: Plan) => void
  readonly refusedFile: { value: { readonly name: string; readonly problems: readonly Problem[] } | null }
  readonly notice: { value: string }
  /** The plan as a file last took it. */
  readonly inFile: { value: Plan | null }
  /** The elevations at hand. */
  readonly grids: { peek(): readonly KeptGrid[] }
}

/** Opens a plan file. A bad one changes nothing: all its faults are listed. */
export async function openPlanFile(store: FileStore, file: File): Promise<void> {
  let bytes: Uint8Array
  try {
    bytes = new Uint8Array(await file.arrayBuffer())
  } catch {
    store.notice.value = `${isolated(file.name)} cannot be read. Check that it is still there and that you may read it.`
    return
  }
  const result = parsePlanBytes(bytes)
  if (result.ok) store.open(result.value)
  else store.refusedFile.value = { name: file.name, problems: result.problems }
}

/** Lets the person choose a plan file, and opens it. */
export const choosePlanFile = (store: FileStore): void =>
  chooseFiles('.geojson,.json,application/geo+json,application/json', ([file]) => {
    if (file) void openPlanFile(store, file)
  })

/** Lets the person choose files of some types. */
export function chooseFiles(accept: string, onFiles: (files: readonly File[]) => void): void {
  const input = document.createElement('input')
  input.type = 'file'
  input.multiple = true
  input.accept = accept
  input.addEventListener('change', () => onFiles([...(input.files ?? [])]))
  input.click()
}

/** A browser says every few hundredths of a second that files are held over the page, and does not always say when they are gone. */
const HELD_MS = 300

/**
 * Takes files that are dropped anywhere on the page. Returns the undoing of itself.
 *
 * @param onHeld whether files are held over the page just now
 */
export function takeDroppedFiles(
  onFiles: (files: readonly File[]) => void,
  onHeld: (areHeld: boolean) => void,
): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined
  const letGo = () => {
    clearTimeout(timer)
    onHeld(false)
  }
  const holdsFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false
  const over = (event: DragEvent) => {
    // Without this the browser would leave the page and show the file itself.
    if (!holdsFiles(event)) return
    event.preventDefault()
    onHeld(true)
    clearTimeout(timer)
    timer = setTimeout(letGo, HELD_MS)
  }
  const drop = (event: DragEvent) => {
    if (!holdsFiles(event)) return
    event.preventDefault()
    letGo()
    onFiles([...(event.dataTransfer?.files ?? [])])
  }
  addEventListener('dragover', over)
  addEventListener('drop', drop)
  return () => {
    removeEventListener('dragover', over)
    removeEventListener('drop', drop)
  }
}

/** Of the File System Access interface only what is used here; not every browser has it. */
interface SavePicker {
  showSaveFilePicker?: (options: { suggestedName: string }) => Promise<FileSystemFileHandle>
}

/** Saves the plan where the person says, or among the downloads where the browser has no such dialog. */
export async function savePlanFile(store: FileStore): Promise<void> {
  const plan = store.plan.peek()
  const name = planFileName(plan.title)
  const text = formatPlan(plan)
  const picker = (window as SavePicker).showSaveFilePicker
  if (!picker) {
    download(name, text)
    tellSaved(store, plan)
    return
  }
  try {
    const handle = await picker.call(window, { suggestedName: name })
    const file = await handle.createWritable()
    await file.write(text)
    await file.close()
    tellSaved(store, plan)
  } catch (error) {
    if (error instanceof Error && error.name === 'AbortError') return
    store.notice.value = `${name} could not be written there. Choose another place, or free some room.`
  }
}

/** A plan file holds no elevations: whoever opens it elsewhere would have other lengths. */
function tellSaved(store: FileStore, plan: Plan): void {
  store.inFile.value = plan
  const own = store.grids
    .peek()
    .filter(({ state, key }) => state === 'read' && key !== 'demo' && key !== 'online')
  if (own.length === 0) return
  const names = own.map((grid) => isolated(grid.name)).join(', ')
  store.notice.value = `The plan is saved; its elevations stay behind. Whoever opens it elsewhere also needs ${names}, or reads other lengths.`
}

/** `NAME.plan.geojson`, without what some file system refuses in a name. */
export function planFileName(title: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what must go
  const safe = title.replace(/[\u0000-\u001f\\/:*?"<>|]+/g, '-').replace(/^[.\s-]+|[.\s-]+$/g, '')
  return `${safe.slice(0, 80) || 'plan'}.plan.geojson`
}

/** Puts a text among the downloads. */
export function download(name: string, text: string, type = 'application/geo+json'): void {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(new Blob([text], { type }))
  link.download = name
  link.click()
  // The download has begun only after the click has been handled.
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000)
}
