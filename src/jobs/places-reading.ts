import type { Everything } from '../files/everything-file'
import { readGpxTracks } from '../files/places/gpx-tracks'
import { type FeaturesKind, kindOfFeatures } from '../files/places/kind-of-features'
import { type PlaceEnding, readPlaces } from '../files/places/place-files'
import { tooLarge } from '../files/places/places'
import type { HazardFeatures } from '../hazard/hazard-features'
import type { TrackPoint } from '../plan/field-schema'
import type { Places } from '../plan/places'
import type { Plan } from '../plan/plan'
import type { Result } from '../problem'

const bytesOf = async (file: Blob) => new Uint8Array(await file.arrayBuffer())

/** Each rejects where the file cannot be read from the disk. */
export const PLACES_JOBS = {
  /** What a file of places holds. */
  read: async ({
    file,
    ending,
  }: {
    readonly file: Blob
    readonly ending: PlaceEnding
  }): Promise<Result<Places>> => tooLarge(file.size) ?? readPlaces(ending, await bytesOf(file)),
  /** What a file of features is to be read as. */
  kind: async ({ file }: { readonly file: Blob }): Promise<FeaturesKind> =>
    kindOfFeatures(await bytesOf(file)),
  hazards: async ({ file }: { readonly file: Blob }): Promise<Result<HazardFeatures>> => {
    const { parseHazardBytes } = await import('../files/parse-hazard-features')
    return parseHazardBytes(await bytesOf(file))
  },
  plan: async ({ file }: { readonly file: Blob }): Promise<Result<Plan>> => {
    const { parsePlanBytes } = await import('../files/parse-plan')
    return parsePlanBytes(await bytesOf(file))
  },
  everything: async ({ file }: { readonly file: Blob }): Promise<Result<Everything>> => {
    const { parseEverything } = await import('../files/everything-file')
    return parseEverything(await bytesOf(file))
  },
  /** The tracks of a GPX file. */
  tracks: async ({ file }: { readonly file: Blob }): Promise<Result<readonly (readonly TrackPoint[])[]>> =>
    tooLarge(file.size) ?? readGpxTracks(await bytesOf(file)),
}
