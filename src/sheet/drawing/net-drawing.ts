import type { LineId, StationId } from '../../plan/id'
import { type HazardKind, type Lay, type Plan, type Position, verticesOf } from '../../plan/plan'
import { formatDistanceM, type UnitSystem } from '../../report/quantity-text'
import type { Report } from '../../report/report'
import { textWidthEm } from '../layout/text-width'
import { spliceMarks } from '../line-marks'
import { type Box, boxAround, clipSegment, type Point, type Segment, segmentsOf } from './geometry'
import { type GridLine, graticule } from './grid-lines'
import { type Label, type PlacedLabel, placeLabels } from './label-placer'
import { fittingScale, type ScaleBar, scaleBar } from './map-scale'
import { planeAbout } from './plane'

/** A map of the net, every figure in mm of the drawing; north is up. */
export interface NetDrawing {
  readonly widthMm: number
  readonly heightMm: number
  readonly frame: Box
  readonly scale: number
  readonly bar: ScaleBar
  readonly grid: readonly GridLine[]
  readonly hazards: readonly {
    readonly kind: HazardKind
    readonly rings: readonly (readonly Point[])[]
    readonly closed: boolean
  }[]
  readonly legs: readonly {
    readonly lay: Lay
    readonly points: Segment
    readonly ticks: readonly Segment[]
  }[]
  readonly bends: readonly Point[]
  readonly splices: readonly Point[]
  readonly stations: readonly { readonly at: Point; readonly hasSupply: boolean }[]
  readonly labels: readonly (PlacedLabel & { readonly style: LabelStyle })[]
  readonly unplaced: readonly string[]
}

export type LabelStyle = 'station' | 'line' | 'hazard'

/** Letters of each kind of label, mm an em; sheet.css holds the same figures. */
const LETTER_MM: Readonly<Record<LabelStyle, number>> = { station: 3.3, line: 2.8, hazard: 2.6 }
/** Bands beside the frame: the grid's labels stand above and to the left, scale and legend below. */
const GRID_BAND_MM = 4.5
const FOOT_BAND_MM = 11
/** Ground kept free inside the frame, so that names at the edge find room. */
const EDGE_MM = 14
const STATION_MM: readonly [number, number] = [5.2, 3.6]
const TICK_STEP_MM = 4.5
const TICK_MM = 2.2

const labelOf = (id: string, style: LabelStyle, text: string, at: Point, clearMm: number): Label => ({
  id,
  text,
  widthMm: textWidthEm(text, style === 'station') * LETTER_MM[style] + 0.8,
  heightMm: LETTER_MM[style] * 1.2,
  at,
  clearMm,
})

const between = ([x0, y0]: Point, [x1, y1]: Point, part: number): Point => [
  x0 + (x1 - x0) * part,
  y0 + (y1 - y0) * part,
]

/** Short strokes across an overhead leg. */
function crossTicks([from, to]: Segment): readonly Segment[] {
  const lengthMm = Math.hypot(to[0] - from[0], to[1] - from[1])
  const count = Math.max(1, Math.floor(lengthMm / TICK_STEP_MM))
  const across: Point = [
    ((from[1] - to[1]) / lengthMm) * (TICK_MM / 2),
    ((to[0] - from[0]) / lengthMm) * (TICK_MM / 2),
  ]
  return Array.from({ length: lengthMm > 0 ? count : 0 }, (_, i) => {
    const [x, y] = between(from, to, (i + 0.5) / count)
    return [
      [x - across[0], y - across[1]],
      [x + across[0], y + across[1]],
    ] as const
  })
}

/** The middle of a way, by length. */
function middleOf(points: readonly Point[]): Point {
  const segments = segmentsOf(points)
  const lengths = segments.map(([a, b]) => Math.hypot(b[0] - a[0], b[1] - a[1]))
  let rest = lengths.reduce((sum, length) => sum + length, 0) / 2
  for (const [i, length] of lengths.entries()) {
    if (rest <= length && length > 0) return between(...segments[i]!, rest / length)
    rest -= length
  }
  return points[0]!
}

/** Draws the whole net into a box on paper, at the largest round scale that fits. */
export function drawNet(
  plan: Plan,
  report: Report,
  room: { readonly widthMm: number; readonly heightMm: number },
  system: UnitSystem,
): NetDrawing {
  const frame: Box = {
    left: GRID_BAND_MM,
    top: GRID_BAND_MM,
    right: room.widthMm - 0.3,
    bottom: room.heightMm - FOOT_BAND_MM,
  }
  const lines = [...plan.lines.values()]
  const positions = [
    ...[...plan.stations.values()].map((station) => station.position),
    ...lines.flatMap((line) => line.bends),
  ]
  const plane = planeAbout(positions)
  const onPlane = positions.map(plane.toPlane)
  const extentOf = (values: readonly number[]) =>
    values.length === 0 ? 0 : Math.max(...values) - Math.min(...values)
  const insideMm = [frame.right - frame.left - 2 * EDGE_MM, frame.bottom - frame.top - 2 * EDGE_MM] as const
  const scale = fittingScale(
    [extentOf(onPlane.map(([e]) => e)), extentOf(onPlane.map(([, n]) => n))],
    insideMm,
  )
  const middle: Point = [(frame.left + frame.right) / 2, (frame.top + frame.bottom) / 2]
  const toPaper = (position: Position): Point => {
    const [eastM, northM] = plane.toPlane(position)
    return [middle[0] + (eastM * 1000) / scale, middle[1] - (northM * 1000) / scale]
  }

  const ways = lines.map((line) => verticesOf(plan, line).map(toPaper))
  const legs = lines.flatMap((line, i) =>
    segmentsOf(ways[i]!).map((points, k) => {
      const lay = line.legs[k]!.lay
      return { lay, points, ticks: lay === 'overhead' ? crossTicks(points) : [] }
    }),
  )
  const measured = new Map(report.lines.map((line) => [line.id, line]))
  const splices = lines.flatMap((line) => {
    const found = measured.get(line.id)
    return found ? spliceMarks(plan, line, found).map((splice) => toPaper(splice.position)) : []
  })
  const supplies = new Set([...plan.circuits.values()].flatMap(({ supply }) => (supply ? [supply.at] : [])))
  const stations = [...plan.stations.values()].map((station) => ({
    id: station.id,
    name: station.name || station.id,
    at: toPaper(station.position),
    hasSupply: supplies.has(station.id as StationId),
  }))
  const hazards = [...plan.hazards.values()].map((hazard) => ({
    id: hazard.id,
    kind: hazard.hazard,
    name: hazard.name,
    closed: hazard.geometry.type === 'Polygon',
    rings: (hazard.geometry.type === 'Polygon'
      ? hazard.geometry.coordinates
      : [hazard.geometry.coordinates]
    ).map((ring) => ring.map(toPaper)),
  }))
  const bends = lines.flatMap((line) => line.bends.map(toPaper))
  const grid = graticule(plane, scale, frame, middle)

  const wanted: (readonly [LabelStyle, Label])[] = [
    ...stations.map(
      ({ id, name, at }) => ['station', labelOf(`station ${id}`, 'station', name, at, 2.8)] as const,
    ),
    ...lines.map((line, i) => {
      const text = `${i + 1} · ${formatDistanceM(measured.get(line.id as LineId)?.groundM ?? 0, system)}`
      return ['line', labelOf(`line ${line.id}`, 'line', text, middleOf(ways[i]!), 0.6)] as const
    }),
    ...hazards.flatMap(({ id, name, kind, rings }) => {
      const visible = segmentsOf(rings[0] ?? []).flatMap((segment) => clipSegment(segment, frame) ?? [])
      if (visible.length === 0) return []
      return [
        [
          'hazard',
          labelOf(`hazard ${id}`, 'hazard', name || kind.replace('-', ' '), middleOf(visible), 0.8),
        ] as const,
      ]
    }),
  ]
  const symbols = [
    ...stations.map(({ at }) => boxAround(at, ...STATION_MM)),
    ...splices.map((at) => boxAround(at, 3, 3)),
    ...bends.map((at) => boxAround(at, 1.6, 1.6)),
  ]
  const { placed, unplaced } = placeLabels(
    wanted.map(([, label]) => label),
    {
      bounds: frame,
      obstacles: symbols,
      strokes: [
        ...legs.map((leg) => leg.points),
        ...hazards.flatMap(({ rings }) => rings.flatMap(segmentsOf)),
      ],
    },
  )
  const styles = new Map(wanted.map(([style, label]) => [label, style]))

  return {
    ...room,
    frame,
    scale,
    bar: scaleBar(scale, 50, system),
    grid,
    hazards,
    legs,
    bends,
    splices,
    stations,
    labels: placed.map((label) => ({ ...label, style: styles.get(label.label)! })),
    unplaced: unplaced.map((label) => label.text),
  }
}
