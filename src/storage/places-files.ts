import { PLACE_FILES, type PlaceEnding, placeEndingOf } from '../files/places/place-files'
import { placesOfPlan } from '../files/places/places-of-plan'
import { placesJobs } from '../jobs/places-jobs'
import type { Places } from '../plan/places'
import type { Plan } from '../plan/plan'
import type { Problem, Result } from '../problem'
import { download, planFileName } from './save-plan-file'

/** Where the places of a file go, and its faults. */
export interface PlacesStore {
  readonly importedPlaces: { value: { readonly name: string; readonly places: Places } | null }
  readonly refusedFile: { value: { readonly name: string; readonly problems: readonly Problem[] } | null }
}

/** Reads a file of places off the main thread, and asks what each means. A bad one changes nothing. */
export async function importPlaces(store: PlacesStore, file: File): Promise<void> {
  const read = await (/\.gpkg$/i.test(file.name) ? geopackagePlaces(file) : placesIn(file))
  if (!read) return
  if (read.ok) store.importedPlaces.value = { name: file.name, places: read.value }
  else store.refusedFile.value = { name: file.name, problems: read.problems }
}

async function placesIn(file: File): Promise<Result<Places> | undefined> {
  const jobs = placesJobs()
  const result = await jobs.ask('read', { file, ending: placeEndingOf(file.name) ?? '.geojson' })
  jobs.dispose()
  return result?.ok ? result.value : result
}

async function geopackagePlaces(file: File): Promise<Result<Places> | undefined> {
  const { mapsJobs } = await import('../jobs/maps/maps-jobs')
  const jobs = mapsJobs()
  const result = await jobs.geopackage(file)
  jobs.dispose()
  return result
}

/** Puts stations and lines among the downloads as another program reads them. */
export async function exportPlaces(plan: Plan, ending: PlaceEnding): Promise<void> {
  const { write, type } = PLACE_FILES[ending]
  const content = await write(placesOfPlan(plan), plan.title || 'Fieldpair')
  download(planFileName(plan.title).replace(/\.plan\.geojson$/, ending), content, type)
}
