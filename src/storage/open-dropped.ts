import { bytesFromBlob } from '../files/byte-source'
import type { Everything } from '../files/everything-file'
import { FORMAT } from '../files/parse-plan'
import { type FeaturesKind, kindOfFeatures } from '../files/places/kind-of-features'
import type { HazardFeatures } from '../hazard/hazard-features'
import { isolated } from '../isolated'
import { MAP_ENDINGS, mapKindOf } from '../jobs/maps/map-spec'
import type { Places } from '../plan/places'
import type { Plan } from '../plan/plan'
import type { Problem } from '../problem'
import { chooseFiles, ELEVATION_TYPES, HAZARD_TYPES } from './choose-files'
import { openPlanFile, readPlanFile } from './open-plan-file'
import { readAside, resultAside } from './read-aside'
import type { FileStore } from './save-plan-file'
import { SMALL_BYTES } from './small-files'
import { takeElevations, until, type Waiting } from './take-elevations'

/** Where a file goes that is no plan. */
export interface ImportStore extends FileStore {
  /** Places that wait for the person to say what each means. */
  readonly importedPlaces: Waiting<{ readonly name: string; readonly places: Places }>
  /** Features that wait for the person to say which hazards they are. */
  readonly imported: Waiting<{ readonly name: string; readonly features: HazardFeatures }>
  readonly broughtBack: { value: { readonly name: string; readonly all: Everything } | null }
  readonly mapsKeeper: Waiting<{ readonly add: (files: readonly File[]) => Promise<void> }>
  readonly mapsAreOpen: { value: boolean }
  readonly refusedFile: Waiting<{ readonly name: string; readonly problems: readonly Problem[] }>
}

const isElevation = (file: File): boolean => /\.(tiff?|hgt)$/i.test(file.name)

/** A map to lie beneath the net: an archive of tiles, a picture, or a GeoTIFF with colours in it. */
async function isMap(file: File): Promise<boolean> {
  const kind = mapKindOf(file.name)
  if (kind !== 'geotiff') return kind !== undefined
  const { isColourTiff } = await import('../files/maps/geotiff-picture')
  return isColourTiff(bytesFromBlob(file.name, file))
}

/** Shows maps beneath the net: just after the start nobody does yet, so that they wait. */
async function takeMaps(store: ImportStore, files: readonly File[]): Promise<void> {
  await until(store.mapsKeeper, (keeper) => keeper !== null)
  await store.mapsKeeper.value?.add(files)
  // Over what was refused the list of maps would lie, and nobody could read it.
  if (files.length === 1 && store.refusedFile.value !== null) return
  await until(store.refusedFile, (refused) => refused === null)
  store.mapsAreOpen.value = true
}

/** Keeps a plan in this browser beside the one on the table. False where it keeps nothing. */
type KeepAside = (plan: Plan) => Promise<boolean>

/** Lets the person choose files of any kind that is read here, and opens each as what it is. */
export const chooseAnyFiles = (store: ImportStore, keepAside: KeepAside): void =>
  chooseFiles(
    `${HAZARD_TYPES},.gpx,.kml,.kmz,.csv,.gpkg,.zip,${ELEVATION_TYPES},${MAP_ENDINGS}`,
    (files) => void openDroppedFiles(store, files, keepAside),
  )

/**
 * Opens what was dropped on the page, each file as what it is: a map, elevations, a plan, or roads, waters and the like. Of several plans the first lies
 * on the table, and the others are kept aside.
 */
export async function openDroppedFiles(
  store: ImportStore,
  dropped: readonly File[],
  keepAside: KeepAside = async () => false,
): Promise<void> {
  const archives = dropped.filter(({ name }) => /\.everything\.zip$/i.test(name))
  if (archives[0]) {
    const { openEverything } = await import('./everything')
    await openEverything(store, archives[0])
  }
  const single = dropped.filter((each) => !archives.includes(each))
  const areMaps = await Promise.all(single.map(isMap))
  const maps = single.filter((_, i) => areMaps[i])
  const files = single.filter((_, i) => !areMaps[i])
  if (maps.length > 0) void takeMaps(store, maps)
  const elevations = files.filter(isElevation)
  if (elevations.length > 0) void takeElevations(store, elevations)
  const plans: File[] = []
  const hazards: File[] = []
  const places: File[] = []
  for (const file of files.filter((each) => !isElevation(each))) {
    const kind = await kindOf(file)
    if (kind === 'plan') plans.push(file)
    else (kind === 'places' ? places : hazards).push(file)
  }
  const [plan, ...others] = plans
  if (plan) await openPlanFile(store, plan)
  if (plan) await keepOthers(store, plan, others, keepAside)
  await importHazards(store, hazards)
  await inTurn(store, store.importedPlaces, places, async (file) => {
    const { importPlaces } = await import('./places-files')
    await importPlaces(store, file)
  })
}

/** Takes one file after the other, each once the person is done with the one before and with what was refused. */
async function inTurn(
  { refusedFile }: ImportStore,
  asked: Waiting<unknown>,
  files: readonly File[],
  take: (file: File) => Promise<void>,
): Promise<void> {
  for (const file of files) {
    await until(asked, (waiting) => waiting === null)
    await until(refusedFile, (refused) => refused === null)
    await take(file)
  }
}

async function keepOthers(
  store: ImportStore,
  open: File,
  others: readonly File[],
  keepAside: KeepAside,
): Promise<void> {
  const kept: string[] = []
  const left: string[] = []
  for (const file of others) {
    // A file that was refused is read about first.
    await until(store.refusedFile, (refused) => refused === null)
    const plan = await readPlanFile(store, file)
    if (plan) ((await keepAside(plan)) ? kept : left).push(isolated(file.name))
  }
  const sentences = [
    `One plan lies on the table at a time: that is ${isolated(open.name)} now.`,
    ...(kept.length > 0 ? [`${kept.join(', ')}: kept in this browser, under Plans.`] : []),
    ...(left.length > 0 ? [`${left.join(', ')}: open separately, for this browser keeps no plans.`] : []),
  ]
  if (sentences.length > 1) store.notice.value = sentences.join(' ')
}

/** Reads lines and areas of GeoJSON files, and asks of one after the other which hazards they are. A bad file changes nothing. */
export const importHazards = (store: ImportStore, files: readonly File[]): Promise<void> =>
  inTurn(store, store.imported, files, (file) => importOne(store, file))

async function importOne(store: ImportStore, file: File): Promise<void> {
  const result = await (file.size > SMALL_BYTES ? resultAside('hazards', file) : hazardsHere(file))
  if (!result) {
    store.notice.value = `${isolated(file.name)} cannot be read. Check that it is still there and that you may read it.`
    return
  }
  if (result.ok) store.imported.value = { name: file.name, features: result.value }
  else store.refusedFile.value = { name: file.name, problems: result.problems }
}

async function hazardsHere(file: File) {
  const { parseHazardBytes } = await import('../files/parse-hazard-features')
  const bytes = await file.arrayBuffer().catch(() => undefined)
  return bytes && parseHazardBytes(new Uint8Array(bytes))
}

/** Endings of files of places that hold nothing else: src/files/places/place-files.ts reads them. */
const PLACES_ONLY = /\.(gpx|km[lz]|csv|gpkg)$/i

/** In its first bytes a plan says that it is one, as this program writes it: it need not be read twice. */
const HEAD_BYTES = 1000

/** What a file is to be read as; what cannot be read at all is told by the reader of plans. */
async function kindOf(file: File): Promise<FeaturesKind> {
  if (PLACES_ONLY.test(file.name)) return 'places'
  const head = await file.slice(0, HEAD_BYTES).text()
  if (head.includes(`"${FORMAT}"`)) return 'plan'
  if (file.size > SMALL_BYTES) {
    const kind = await readAside('kind', file)
    return kind.ok ? kind.value : 'plan'
  }
  const bytes = await file.arrayBuffer().catch(() => undefined)
  return bytes ? kindOfFeatures(new Uint8Array(bytes)) : 'plan'
}
