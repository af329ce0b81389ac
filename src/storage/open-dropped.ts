import { textOf } from '../files/text-bytes'
import type { HazardFeatures } from '../hazard/hazard-features'
import { isolated } from '../isolated'
import { type FileStore, openPlanFile } from './open-save'

/** Where a file goes that is no plan. */
export interface ImportStore extends FileStore {
  readonly groundWorker: { peek(): { readonly add: (files: readonly File[]) => Promise<void> } | null }
  /** Features that wait for the person to say which hazards they are. */
  readonly imported: { value: { readonly name: string; readonly features: HazardFeatures } | null }
}

/** Names of elevation files that are read here. */
export const ELEVATION_TYPES = '.tif,.tiff,.hgt,image/tiff'
export const HAZARD_TYPES = '.geojson,.json,application/geo+json'
const isElevation = (file: File): boolean => /\.(tiff?|hgt)$/i.test(file.name)

/** Opens what was dropped on the page, each file as what it is: elevations, a plan, or roads, waters and the like. */
export async function openDroppedFiles(store: ImportStore, files: readonly File[]): Promise<void> {
  const [other] = files.filter((file) => !isElevation(file))
  if (other) await ((await isPlan(other)) ? openPlanFile(store, other) : importHazards(store, other))
  await store.groundWorker.peek()?.add(files.filter(isElevation))
}

/** Reads lines and areas of a GeoJSON file, and asks which hazards they are. A bad file changes nothing. */
export async function importHazards(store: ImportStore, file: File): Promise<void> {
  const { parseHazardFeatures } = await import('../files/parse-hazard-features')
  const bytes = await file.arrayBuffer().catch(() => undefined)
  if (bytes === undefined) {
    store.notice.value = `${isolated(file.name)} cannot be read. Check that it is still there and that you may read it.`
    return
  }
  const text = textOf(new Uint8Array(bytes))
  const result = text.ok ? parseHazardFeatures(text.value) : text
  if (result.ok) store.imported.value = { name: file.name, features: result.value }
  else store.refusedFile.value = { name: file.name, problems: result.problems }
}

/** Whether a file is to be judged as a plan: all but a collection of features without a plan in it. */
async function isPlan(file: File): Promise<boolean> {
  try {
    const text = textOf(new Uint8Array(await file.arrayBuffer()))
    const value: unknown = text.ok && JSON.parse(text.value)
    return typeof value !== 'object' || value === null || 'plan' in value || !('features' in value)
  } catch {
    return true
  }
}
