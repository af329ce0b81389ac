import { textOf } from '../files/text-bytes'
import type { HazardFeatures } from '../hazard/hazard-features'
import { isolated } from '../isolated'
import type { Problem } from '../problem'
import { type FileStore, openPlanFile } from './open-save'

/** A place for one thing that waits for the person. */
interface Place<T> {
  value: T | null
  subscribe(listener: (value: T | null) => void): () => void
}

/** Where a file goes that is no plan. */
export interface ImportStore extends FileStore {
  readonly groundWorker: Place<{ readonly add: (files: readonly File[]) => Promise<void> }>
  /** Features that wait for the person to say which hazards they are. */
  readonly imported: Place<{ readonly name: string; readonly features: HazardFeatures }>
  readonly refusedFile: Place<{ readonly name: string; readonly problems: readonly Problem[] }>
}

/** Names of elevation files that are read here. */
export const ELEVATION_TYPES = '.tif,.tiff,.hgt,image/tiff'
export const HAZARD_TYPES = '.geojson,.json,application/geo+json'
const isElevation = (file: File): boolean => /\.(tiff?|hgt)$/i.test(file.name)

/** Opens what was dropped on the page, each file as what it is: elevations, a plan, or roads, waters and the like. */
export async function openDroppedFiles(store: ImportStore, files: readonly File[]): Promise<void> {
  const elevations = files.filter(isElevation)
  if (elevations.length > 0) void takeElevations(store, elevations)
  const plans: File[] = []
  const hazards: File[] = []
  for (const file of files.filter((each) => !isElevation(each)))
    ((await isPlan(file)) ? plans : hazards).push(file)
  const [plan, ...others] = plans
  if (plan) await openPlanFile(store, plan)
  if (plan && others.length > 0) {
    const names = others.map(({ name }) => isolated(name)).join(', ')
    store.notice.value = `One plan lies on the table at a time: that is ${isolated(plan.name)} now. ${names}: open separately, once this one is as you want it.`
  }
  await importHazards(store, hazards)
}

async function takeElevations({ groundWorker }: ImportStore, files: readonly File[]): Promise<void> {
  // Just after the start nobody reads elevations yet.
  await until(groundWorker, (worker) => worker !== null)
  await groundWorker.value?.add(files)
}

const until = <T>(place: Place<T>, isSo: (value: T | null) => boolean): Promise<void> =>
  new Promise((done) => {
    let stop = () => {}
    let isDone = false
    stop = place.subscribe((value) => {
      if (!isSo(value)) return
      isDone = true
      stop()
      done()
    })
    // It was so at once, before there was a way to stop.
    if (isDone) stop()
  })

/** Reads lines and areas of GeoJSON files, and asks of one after the other which hazards they are. A bad file changes nothing. */
export async function importHazards(store: ImportStore, files: readonly File[]): Promise<void> {
  for (const file of files) {
    await until(store.imported, (waiting) => waiting === null)
    await until(store.refusedFile, (refused) => refused === null)
    await importOne(store, file)
  }
}

async function importOne(store: ImportStore, file: File): Promise<void> {
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
