import type { Position } from '../geo/position'
import type { LineId, StationId } from '../plan/id'
import { LIMITS } from '../plan/limits'
import { LAYS, type Leg, type Line, type Station } from '../plan/plan'
import { type Check, listOf, members, number, oneOf, text, truth } from '../plan/shape'
import { type FeatureFile, featureRest, featureShape } from './feature-shape'
import { type KnownIds, reference } from './known-ids'
import { position, toPosition } from './parse-position'
import { restOf } from './unknown-members'

const LEG_SHAPE = members(
  'The leg',
  { lay: oneOf('The lay', LAYS) },
  {
    slackPct: number(LIMITS.legSlackPct),
    sagPct: number(LIMITS.legSagPct),
    supportM: number(LIMITS.legSupportM),
    spanM: number(LIMITS.legSpanM),
    note: text('The note'),
  },
)

export const lineShape = (known: KnownIds): Check =>
  featureShape(
    'The line',
    members(
      'The member "properties"',
      {
        from: reference('The station where the line starts', 'station', known.stations),
        to: reference('The station where the line ends', 'station', known.stations),
        wire: reference('The wire', 'wire', known.wires),
        legs: listOf('The list of legs', LEG_SHAPE),
      },
      {
        pairs: number(LIMITS.pairs),
        return: oneOf('The return', ['pair', 'earth']),
        worn: truth('The mark "worn"'),
        electrodeOhms: listOf('The list of electrodes', number(LIMITS.electrodeOhms), { min: 2, max: 2 }),
      },
    ),
    members('The member "geometry"', {
      type: oneOf('The type', ['LineString']),
      coordinates: listOf('The list of vertices', position, { min: 2 }),
    }),
  )

interface LineProperties {
  readonly from: string
  readonly to: string
  readonly wire: string
  readonly pairs?: number
  readonly return?: 'pair' | 'earth'
  readonly electrodeOhms?: [number, number]
  readonly worn?: boolean
  readonly legs: readonly (Leg & { readonly [name: string]: unknown })[]
}

/** A line that has passed `lineShape` and has no `lineFaults`. Its ends are the stations from here on. */
export function toLine(value: unknown, stations: ReadonlyMap<StationId, Station>): Line {
  const file = value as FeatureFile<LineProperties, { coordinates: readonly Position[] }>
  const { from, to, wire, pairs = 1, return: way = 'pair', electrodeOhms, worn, legs } = file.properties
  const vertices = file.geometry.coordinates
  const endElevationsM = [
    elevationApart(stations.get(from as StationId), vertices[0]!),
    elevationApart(stations.get(to as StationId), vertices.at(-1)!),
  ] as const
  return {
    id: file.id as LineId,
    from: from as StationId,
    to: to as StationId,
    bends: vertices.slice(1, -1).map(toPosition),
    legs: legs.map(toLeg),
    wire,
    pairs,
    return: way,
    ...(electrodeOhms && { electrodeOhms }),
    ...(worn && { worn }),
    ...(endElevationsM.some((each) => each !== null) && { endElevationsM }),
    ...featureRest(file, ['from', 'to', 'wire', 'pairs', 'return', 'electrodeOhms', 'worn', 'legs']),
  }
}

const elevationApart = (station: Station | undefined, [, , elevationM]: Position): number | null =>
  elevationM === undefined || elevationM === station?.position[2] ? null : elevationM + 0

const LEG_MEMBERS = ['lay', 'slackPct', 'sagPct', 'supportM', 'spanM', 'note']

function toLeg(leg: LineProperties['legs'][number]): Leg {
  const { lay, slackPct, sagPct, supportM, spanM, note } = leg
  const rest = restOf(leg, LEG_MEMBERS)
  return {
    lay,
    ...(slackPct !== undefined && { slackPct }),
    ...(sagPct !== undefined && { sagPct }),
    ...(supportM !== undefined && { supportM }),
    ...(spanM !== undefined && { spanM }),
    ...(note !== undefined && { note }),
    ...(rest && { rest }),
  }
}
