import { formatPlan } from '../files/format-plan'
import { parsePlanBytes } from '../files/parse-plan'
import { isolated } from '../isolated'
import type { Plan } from '../plan/plan'
import type { Problem } from '../problem'

/** The parts of the store that a file needs: where a plan goes, and where its faults go. */
export interface FileStore {
  readonly plan: { peek(): Plan }
  readonly open: (plan: Plan) => void
  readonly refusedFile: { value: { readonly name: string; readonly problems: readonly Problem[] } | null }
  readonly notice: { value: string }
  /** The plan as a file last took it. */
  readonly inFile: { value: Plan | null }
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

/** Takes files that are dropped anywhere on the page. Returns the undoing of itself. */
export function takeDroppedFiles(onFiles: (files: readonly File[]) => void): () => void {
  const holdsFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false
  const over = (event: DragEvent) => {
    // Without this the browser would leave the page and show the file itself.
    if (holdsFiles(event)) event.preventDefault()
  }
  const drop = (event: DragEvent) => {
    if (!holdsFiles(event)) return
    event.preventDefault()
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
    store.inFile.value = plan
    return
  }
  try {
    const handle = await picker.call(window, { suggestedName: name })
    const file = await handle.createWritable()
    await file.write(text)
    await file.close()
    store.inFile.value = plan
  } catch (error) {
    if (error instanceof Error && error.name === 'AbortError') return
    store.notice.value = `${name} could not be written there. Choose another place, or free some room.`
  }
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
