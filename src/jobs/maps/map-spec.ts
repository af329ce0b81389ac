import type { ArchiveFacts } from '../../files/maps/map-archive'
import type { DatumShift } from '../../geo/datum-shift'
import type { MapFit } from '../../geo/map-fit'

/** Files that a map can be made of, by what reads them. */
export type MapKind = 'pmtiles' | 'mbtiles' | 'geotiff' | 'picture'

/** A file with a map in it, and how it is to be read. */
export interface MapSpec {
  readonly key: string
  readonly name: string
  readonly kind: MapKind
  readonly file: Blob
  /** How a picture lies on the ground; only a picture has it. */
  readonly fit?: MapFit
}

/** What a map turned out to be, of whatever kind its file is. */
export type MapFacts = ArchiveFacts & {
  /** Where its picture lies in another datum. */
  readonly shift?: DatumShift | undefined
}

const ENDINGS: readonly (readonly [MapKind, RegExp])[] = [
  ['pmtiles', /\.pmtiles$/i],
  ['mbtiles', /\.mbtiles$/i],
  ['geotiff', /\.tiff?$/i],
  ['picture', /\.(png|jpe?g|webp)$/i],
]

export const MAP_ENDINGS = '.pmtiles,.mbtiles,.tif,.tiff,.png,.jpg,.jpeg,.webp'

/** What reads a file, by its name; undefined for none. */
export const mapKindOf = (name: string): MapKind | undefined =>
  ENDINGS.find(([, ending]) => ending.test(name))?.[0]
