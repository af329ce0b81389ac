import { trunkLines } from '../../budget/trunk-ends'
import {
  boxOver,
  clipSegment,
  contains,
  overlap,
  type Point,
  type Segment,
  segmentsOf,
} from '../../figure/geometry'
import { DONE_SIGNS, type DoneSign } from '../../figure/legend'
import { type ScaleBar, scaleBar } from '../../figure/scale-bar'
import { type StationSign, stationSigns } from '../../figure/station-signs'
import { between, crossTicks, middleInside } from '../../figure/wire-strokes'
import { hazardName } from '../../hazard/kinds'
import { wayOfWire } from '../../measure/place-on-line'
import type { LineId } from '../../plan/id'
import { type HazardKind, type Lay, type Line, stationName, verticesOf } from '../../plan/plan'
import type { FarLimit } from '../../report/further-set'
import type { Extent } from '../../terrain/elevation-grid'
import { LAY_LETTERS } from '../../words/plan-words'
import { formatRunM } from '../../words/units'
import type { FarOnPaper } from '../far-on-paper'
import { lineMarks } from '../line-marks'
import type { PaperSource } from '../paper-source'
import type { WaysOnPaper } from '../ways-on-paper'
import { type PlacedLabel, placeLabels } from './label-placer'
import { contoursIn } from './map-contours'
import { bunched, type LabelStyle, REACH_MM, signBoxes, wantedLabels } from './map-labels'
import { groundIn, type MapWindow, type MatchLine, toPaper } from './map-window'
import { type MapGrid, mapGrid } from './sheet-grid-lines'

/** Room for the scale bar, mm, and the part of a narrow frame that it may take. */
const MOST_BAR_MM = 45
const MOST_BAR_PART = 0.5

/** A map, every figure in mm of the drawing. */
export interface MapDrawing {
  readonly window: Pick<MapWindow, 'scale' | 'frame'>
  /** The ground in the frame, even in longitude and latitude. */
  readonly extent: Extent
  readonly bar: ScaleBar
  readonly grid: MapGrid
  readonly hazards: readonly {
    readonly kind: HazardKind
    readonly rings: readonly (readonly Point[])[]
    readonly closed: boolean
  }[]
  readonly legs: readonly {
    readonly lay: Lay
    readonly points: Segment
    readonly ticks: readonly Segment[]
    /** False for the lines that are on the map only to show where one is. */
    readonly isSubject: boolean
    /** It leads from one board to another. */
    readonly isTrunk: boolean
  }[]
  /** What was done on the wire, along it. */
  readonly done: readonly { readonly sign: DoneSign; readonly points: readonly Point[] }[]
  readonly contours: readonly {
    readonly points: readonly Point[]
    readonly isIndex: boolean
    readonly text?: string
    readonly at?: Point
  }[]
  /** The ground on which one telephone more could stand. */
  readonly far: readonly { readonly limit: FarLimit; readonly rings: readonly (readonly Point[])[] }[]
  /** Ways that a line could take, the cheapest first, and the ground in which they lie. */
  readonly ways: readonly (readonly Point[])[]
  readonly corridor: readonly (readonly Point[])[]
  readonly bends: readonly Point[]
  readonly splices: readonly Point[]
  readonly tags: readonly { readonly at: Point; readonly isTestPoint: boolean }[]
  readonly stations: readonly { readonly at: Point; readonly sign: StationSign }[]
  readonly matches: readonly MatchLine[]
  readonly labels: readonly (PlacedLabel & { readonly style: LabelStyle })[]
  /** Texts for which the map had no room. */
  readonly unplaced: readonly string[]
}

/** What a map is wanted for. */
export interface MapWish {
  /** The one line that bears its marks, the rest of the net being faint; without it every line is drawn in full. */
  readonly subject?: LineId
  readonly matches?: readonly MatchLine[]
  readonly far?: FarOnPaper
  readonly ways?: WaysOnPaper
}

/** Draws what lies in a window. */
export function drawMap(
  source: PaperSource,
  window: MapWindow,
  { subject, matches = [], far, ways }: MapWish = {},
): MapDrawing {
  const { plan, report, catalog, system } = source
  const trunks = trunkLines(plan, catalog)
  const on = (position: Parameters<typeof toPaper>[1]) => toPaper(window, position)
  const inside = (at: Point) => contains(window.frame, at)
  const measured = new Map(report.lines.map((line) => [line.id, line]))
  const isSubject = (line: Line) => subject === undefined || line.id === subject
  const lines = [...plan.lines.values()].map((line, i) => ({
    line,
    number: i + 1,
    way: verticesOf(plan, line).map(on),
    marks: isSubject(line) ? lineMarks(source, line, measured.get(line.id)!) : [],
  }))

  const legs = lines.flatMap(({ line, way }) =>
    segmentsOf(way).flatMap((points, k) => {
      if (!clipSegment(points, window.frame)) return []
      const lay = line.legs[k]!.lay
      return [
        {
          lay,
          points,
          ticks: lay === 'overhead' && isSubject(line) ? crossTicks(points) : [],
          isSubject: isSubject(line),
          isTrunk: trunks.has(line.id),
        },
      ]
    }),
  )
  const done = lines
    .filter(({ line }) => isSubject(line))
    .flatMap(({ line }) => {
      const own = measured.get(line.id)!
      return DONE_SIGNS.flatMap(([sign]) =>
        own.field.done[sign].map((stretch) => ({
          sign,
          points: wayOfWire(plan, own, line, stretch).map(on),
        })),
      )
    })
    .filter(({ points }) => segmentsOf(points).some((each) => clipSegment(each, window.frame)))
  const signs = stationSigns(plan.circuits, (type) => catalog.supplies.get(type)?.kind)
  const stations = [...plan.stations.values()]
    .map((station) => ({
      id: station.id,
      name: stationName(plan, station.id),
      at: on(station.position),
      sign: signs.get(station.id) ?? 'telephone',
    }))
    .filter(({ at }) => inside(at))
  const isSeen = (ring: readonly Point[]) => ring.length > 0 && overlap(boxOver(ring), window.frame)
  const hazards = [...plan.hazards.values()]
    .map((hazard) => {
      const { geometry } = hazard
      const rings = geometry.type === 'Polygon' ? geometry.coordinates : [geometry.coordinates]
      return {
        id: hazard.id,
        kind: hazard.hazard,
        name: hazardName(hazard.name, hazard.hazard),
        closed: geometry.type === 'Polygon',
        rings: rings.map((ring) => ring.map(on)),
      }
    })
    .filter(({ rings }) => rings.some(isSeen))
  const marks = lines
    .flatMap((line) => line.marks.map((mark) => ({ ...mark, at: on(mark.position) })))
    .filter(({ at }) => inside(at))
  const splices = marks.filter(({ kind }) => kind === 'splice')
  const tags = subject === undefined ? [] : marks.filter(({ kind }) => kind === 'tag')
  const bends = lines
    .filter(({ line }) => isSubject(line))
    .flatMap(({ line }) => line.bends.map(on))
    .filter(inside)

  const { wanted, want } = wantedLabels()
  for (const { name, at } of stations) want('station', name, at, 2.7)
  for (const { points, text } of matches) want('match', text, between(...points, 0.85), 0.4)
  for (const { line, number, way } of lines) {
    if (line.id === subject) {
      segmentsOf(way).forEach((segment, k) => {
        const at = middleInside(segment, window.frame)
        if (at) want('line', `${k + 1} · ${LAY_LETTERS[line.legs[k]!.lay]}`, at, 0.6)
      })
      continue
    }
    const at = middleInside(way, window.frame)
    if (!at) continue
    const length = formatRunM(measured.get(line.id)?.groundM ?? 0, system)
    const pairs = line.pairs > 1 ? ` · ${line.pairs} pairs` : ''
    want('line', subject === undefined ? `${number} · ${length}${pairs}` : `line ${number}`, at, 0.6)
  }
  if (subject !== undefined) {
    for (const { name, at } of splices) want('mark', name, at, 1.2)
    for (const { name, at } of bunched(tags)) want('mark', name, at, 1.2)
  }
  const shades = (far?.shades ?? []).map(({ area, ...shade }) => ({
    ...shade,
    rings: area.flat().map((ring) => ring.map(on)),
  }))
  for (const { label, rings } of shades) {
    const at = middleInside(rings[0] ?? [], window.frame)
    if (at) want('far', label, at, 0.8)
  }
  const led = (ways?.all ?? []).map((way) => way.map(on))
  for (const [k, way] of led.entries()) {
    const at = middleInside(way, window.frame)
    if (at) want('far', `Way ${k + 1}`, at, 0.8)
  }
  for (const { name, rings } of hazards) {
    const at = middleInside(rings[0] ?? [], window.frame)
    if (at) want('hazard', name, at, 0.8)
  }

  const { placed, unplaced } = placeLabels(
    wanted.map(({ label }) => label),
    {
      bounds: window.frame,
      reachMm: REACH_MM,
      obstacles: signBoxes({ stations, splices, tags, bends }),
      strokes: [
        ...legs.map(({ points }) => points),
        ...hazards.flatMap(({ rings }) => rings.flatMap(segmentsOf)),
        ...matches.map(({ points }) => points),
      ],
    },
  )
  const styles = new Map(wanted.map(({ style, label }) => [label, style]))

  const barMm = Math.min(MOST_BAR_MM, MOST_BAR_PART * (window.frame.right - window.frame.left))
  return {
    window: { scale: window.scale, frame: window.frame },
    extent: groundIn(window),
    bar: scaleBar((barMm * window.scale) / 1000, system),
    grid: mapGrid(window),
    hazards,
    contours: contoursIn(source, window),
    far: shades,
    ways: led,
    corridor: (ways?.corridor.flat() ?? []).map((ring) => ring.map(on)),
    legs,
    done,
    bends,
    splices: splices.map(({ at }) => at),
    tags: tags.map(({ at, isTestPoint = false }) => ({ at, isTestPoint })),
    stations,
    matches,
    labels: placed.map((label) => ({ ...label, style: styles.get(label.label)! })),
    unplaced: unplaced.map(({ text }) => text),
  }
}
