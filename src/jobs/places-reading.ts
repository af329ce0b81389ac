import { readGpxTracks } from '../files/places/gpx-tracks'
import { type PlaceEnding, readPlaces } from '../files/places/place-files'
import type { TrackPoint } from '../plan/field-schema'
import type { Places } from '../plan/places'
import type { Result } from '../problem'

export const PLACES_JOBS = {
  /** What a file of places holds. Rejects where it cannot be read from the disk. */
  read: async ({
    file,
    ending,
  }: {
    readonly file: Blob
    readonly ending: PlaceEnding
  }): Promise<Result<Places>> => readPlaces(ending, new Uint8Array(await file.arrayBuffer())),
  /** The tracks of a GPX file. Rejects where it cannot be read from the disk. */
  tracks: async ({ file }: { readonly file: Blob }): Promise<Result<readonly (readonly TrackPoint[])[]>> =>
    readGpxTracks(new Uint8Array(await file.arrayBuffer())),
}
