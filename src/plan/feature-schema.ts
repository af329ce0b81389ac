import type { Position } from '../geo/position'
import { unknownOf } from '../schema/exact-members'
import { giveMembers, part, takeMembers, type Unknown } from '../schema/kept'
import { valueWords } from '../schema/limit'
import { type Config, type Dataset, idText, judged, oneOf } from '../schema/plain-values'
import { faultyAt, listOf, type Members, members, type Schema } from '../schema/schema'
import { give, take } from '../schema/turned'

const isFigure = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value)

/** A position on the globe: [longitude, latitude] or [longitude, latitude, elevation]. */
export const POSITION = {
  ...judged<Position>((value) => {
    if (!Array.isArray(value) || value.length < 2 || value.length > 3 || !value.every(isFigure)) {
      const message = `The position is ${positionWords(value)}: give [longitude, latitude], in degrees, or these and an elevation in metres.`
      return { code: 'wrong-type', message }
    }
    const [lonDeg, latDeg] = value as unknown as Position
    if (Math.abs(lonDeg) <= 180 && Math.abs(latDeg) <= 90) return undefined
    const message = `Longitude ${lonDeg}°, latitude ${latDeg}° is off the globe: give the longitude first, from −180 to 180, then the latitude, from −90 to 90.`
    return { code: 'off-globe', message }
  }),
  take: (value: unknown) => toPosition(value as Position),
}

const positionWords = (value: unknown): string =>
  Array.isArray(value)
    ? `[${value.slice(0, 4).map(valueWords).join(', ')}${value.length > 4 ? ', …' : ''}]`
    : valueWords(value)

// Adding 0 turns −0, which a file cannot hold, into 0.
export const toPosition = ([lonDeg, latDeg, elevationM]: Position): Position =>
  elevationM === undefined ? [lonDeg + 0, latDeg + 0] : [lonDeg + 0, latDeg + 0, elevationM + 0]

export const PATH = listOf('The list of vertices', POSITION, { min: 2 })

const RING_PATH = listOf('The ring', POSITION, { min: 4 })
const LAST = judged<Position>(() => ({
  code: 'open-ring',
  message: 'The ring is open: end it with the position that it starts with.',
}))

/** A closed ring: its last position is its first. */
const RING = {
  ...RING_PATH,
  '~run': (dataset: { readonly value: unknown }, config: Config): Dataset => {
    const seen = RING_PATH['~run']({ value: dataset.value }, config)
    if (seen.issues) return seen
    const path = dataset.value as readonly Position[]
    const [first, last] = [path[0]!, path.at(-1)!]
    const isClosed = first[0] === last[0] && first[1] === last[1]
    return isClosed ? seen : faultyAt(path, path.length - 1, LAST, last, config)
  },
} as typeof RING_PATH

export const AREA = listOf('The list of rings', RING, { min: 1 })

/** The geometry of a feature. */
export const geometryOf = <T extends string, C extends Schema>(
  type: T,
  coordinates: C,
  others: readonly string[] = [type],
) => part('The member "geometry"', { type: oneOf('The type', others) as unknown as Schema<T>, coordinates })

/** Members of a feature that this program does not know, each with the object that it stands in. */
export interface UnknownOfFeature {
  readonly feature?: Unknown
  readonly properties?: Unknown
  readonly geometry?: Unknown
}

/** A feature as a file has it; `PART` is the schema of its properties but the word for its kind. */
export function featureOf<
  P extends { readonly entries: Readonly<Record<string, Schema>> } & Schema,
  G extends Schema,
>(what: string, kind: string, PART: P, geometry: G) {
  const schema = members(what, {
    type: oneOf('The type', ['Feature']),
    id: idText('The id'),
    properties: PART as Schema,
    geometry: geometry as Schema,
  })
  return { kind, schema, properties: PART, geometry }
}

type FeatureSchema = ReturnType<typeof featureOf>

/** What is left of a feature that its schema let through: its id, its own members and what nobody knows of it; and its geometry. */
export function takeFeature({ schema, properties: part, geometry: shape }: FeatureSchema, value: unknown) {
  const { id, properties, geometry } = value as Members & { readonly properties: Members }
  const own: Record<string, unknown> = { id }
  const ofProperties = takeMembers(own, part.entries, properties, own, 'kind')
  const placed = take(shape, geometry) as { unknown?: Unknown; coordinates: unknown }
  const { unknown: ofGeometry } = placed
  delete placed.unknown
  const feature = unknownOf(value as Members, schema.entries)
  if (feature || ofProperties || ofGeometry)
    own.unknown = {
      ...(feature && { feature }),
      ...(ofProperties && { properties: ofProperties }),
      ...(ofGeometry && { geometry: ofGeometry }),
    }
  return { own, geometry: placed }
}

/** The feature of a thing, as a file has it. */
export function giveFeature(
  { kind, properties, geometry: shape }: FeatureSchema,
  thing: { readonly id: string; readonly unknown?: UnknownOfFeature },
  geometry: object,
) {
  const { id, unknown = {} } = thing
  const placed = give(shape, geometry) as object
  return {
    type: 'Feature',
    id,
    properties: giveMembers({ kind }, properties.entries, thing, unknown.properties),
    geometry: unknown.geometry ? { ...placed, ...unknown.geometry } : placed,
    ...unknown.feature,
  }
}
