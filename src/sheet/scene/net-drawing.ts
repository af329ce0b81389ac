import { type Box, boxAround, type Point, type Segment, segmentsOf } from '../../figure/geometry'
import { scaleBar } from '../../figure/scale-bar'
import { textWidthEm } from '../../figure/text-width'
import { middleInside } from '../../figure/wire-strokes'
import { planeAbout } from '../../geo/plane'
import type { Position } from '../../geo/position'
import { spanOf } from '../../geo/span'
import type { CircuitId } from '../../plan/id'
import { verticesOf } from '../../plan/plan'
import { type Label, placeLabels } from '../drawing/label-placer'
import { type MapWindow, toPaper, windowOver } from '../drawing/map-window'
import { lineNumber } from '../line-marks'
import type { PaperSource } from '../paper-source'
import { frame, type Scene, type Shape, stroke } from './scene'

/** How a circuit is drawn, so that a copy in black and white still tells it from the others. */
interface CircuitStroke {
  readonly name: string
  readonly strokeMm: number
  readonly dashMm?: readonly number[]
}

const STROKES: readonly CircuitStroke[] = [
  { name: 'thick', strokeMm: 1.1 },
  { name: 'dashed', strokeMm: 0.9, dashMm: [4, 2] },
  { name: 'thin', strokeMm: 0.4 },
  { name: 'dotted', strokeMm: 1.1, dashMm: [1.1, 1.1] },
  { name: 'dash and dot', strokeMm: 0.8, dashMm: [6, 1.5, 1, 1.5] },
  { name: 'thin, dashed', strokeMm: 0.4, dashMm: [3, 1.5] },
]

/** Beyond this number strokes come again, and the letters alone tell. */
export const strokeOf = (index: number): CircuitStroke => STROKES[index % STROKES.length]!

/** A to Z, then AA, AB and so on. */
export function letterOf(index: number): string {
  const last = String.fromCharCode(65 + (index % 26))
  return index < 26 ? last : letterOf(Math.floor(index / 26) - 1) + last
}

/** From one circuit to the next beside it on one line, mm. */
const BESIDE_MM = 1.9
const FOOT_MM = 9
/** On a narrower drawing the words stand below the scale bar. */
const NARROW_MM = 120
/** And its numbers are smaller. */
const NARROW_LETTERS = 0.8
const WORDS_MM = 4
const NUMBER_MM = 4.4
const LINE_MM = 3.2
const DOT_MM = 1.3
const MOST_BAR_MM = 50
const WORDS = 'true north up · a square: a supply stands there'

/** Kept free inside the frame for numbers, mm. */
const INSIDE_MM = 9

/** The window at the largest scale that holds the positions, round or not: nobody measures here, and the bar tells lengths. */
function filling(window: MapWindow, positions: readonly Position[]): MapWindow {
  const { frame: around, scale } = window
  const points = positions.map((position) => toPaper(window, position))
  const [left, right] = spanOf(points.map(([x]) => x))
  const [top, bottom] = spanOf(points.map(([, y]) => y))
  const wider = Math.min(
    (around.right - around.left - 2 * INSIDE_MM) / Math.max(right - left, 1),
    (around.bottom - around.top - 2 * INSIDE_MM) / Math.max(bottom - top, 1),
  )
  return { ...window, scale: scale / wider }
}

/** A way moved sideways; at a bend by the mean of both sides. */
function beside(points: readonly Point[], byMm: number): readonly Point[] {
  if (byMm === 0) return points
  const normals = segmentsOf(points).map(([[x0, y0], [x1, y1]]): Point => {
    const length = Math.hypot(x1 - x0, y1 - y0) || 1
    return [-(y1 - y0) / length, (x1 - x0) / length]
  })
  return points.map(([x, y], i) => {
    const [a, b] = [normals[i - 1] ?? normals[i]!, normals[i] ?? normals[i - 1]!]
    return [x + ((a[0] + b[0]) / 2) * byMm, y + ((a[1] + b[1]) / 2) * byMm]
  })
}

/** The net with numbered stations and lines, each circuit in a stroke of its own; and the numbers that found no room. */
export function netDrawing(
  source: PaperSource,
  widthMm: number,
  heightMm: number,
): { readonly scene: Scene; readonly unplaced: readonly string[] } {
  const { plan, system } = source
  const lines = [...plan.lines.values()]
  const stations = [...plan.stations.values()]
  const isNarrow = widthMm < NARROW_MM
  const letters = isNarrow ? NARROW_LETTERS : 1
  const [numberMm, lineMm] = [NUMBER_MM * letters, LINE_MM * letters]
  const footMm = FOOT_MM + (isNarrow ? WORDS_MM : 0)
  const bounds: Box = { left: 0.3, top: 0.3, right: widthMm - 0.3, bottom: heightMm - footMm }
  const positions = [...stations.map(({ position }) => position), ...lines.flatMap(({ bends }) => bends)]
  const window = filling(windowOver(planeAbout(positions), positions, bounds), positions)
  const indexOf = new Map<CircuitId, number>([...plan.circuits.keys()].map((id, i) => [id, i]))
  const drawn = lines.map((line) => ({
    line,
    way: verticesOf(plan, line).map((position) => toPaper(window, position)),
    circuits: [...plan.circuits.values()].filter(({ lines: own }) => own.includes(line.id)),
  }))
  const wires = drawn.flatMap(({ way, circuits }): readonly Shape[] => {
    if (circuits.length === 0) return [stroke(way, 0.25)]
    return circuits.map((circuit, i) => {
      const { strokeMm, dashMm } = strokeOf(indexOf.get(circuit.id)!)
      const points = beside(way, (i - (circuits.length - 1) / 2) * BESIDE_MM)
      return { kind: 'way', points, strokeMm, ...(dashMm && { dashMm }) }
    })
  })
  const supplies = new Set<string>([...plan.circuits.values()].flatMap(({ supply }) => supply?.at ?? []))
  const dots = stations.map(({ id, position }) => ({ id, at: toPaper(window, position) }))
  const label = (text: string, at: Point, sizeMm: number, isBold: boolean, clearMm: number): Label => ({
    id: `${isBold ? 'station' : 'line'} ${text}`,
    text,
    widthMm: textWidthEm(text, isBold) * sizeMm + 0.6,
    heightMm: sizeMm * 1.1,
    at,
    clearMm,
  })
  const wanted = [
    ...dots.map(({ at }, i) => label(String(i + 1), at, numberMm, true, DOT_MM + 0.6)),
    ...drawn.flatMap(({ line, way, circuits }) => {
      const at = middleInside(way, bounds)
      const letters = circuits.map(({ id }) => letterOf(indexOf.get(id)!)).join('')
      return at
        ? [label(`${lineNumber(source, line.id)} ${letters}`.trim(), at, lineMm, false, 1 + circuits.length)]
        : []
    }),
  ]
  const { placed, unplaced } = placeLabels(wanted, {
    bounds,
    reachMm: 20,
    obstacles: dots.map(({ at }) => boxAround(at, 2 * DOT_MM + 0.8, 2 * DOT_MM + 0.8)),
    strokes: drawn.flatMap(({ way }) => segmentsOf(way)),
  })
  const words = placed.flatMap(({ label: own, box, leader }): readonly Shape[] => {
    const isStation = own.id.startsWith('station')
    const sizeMm = isStation ? numberMm : lineMm
    return [
      ...(leader ? [stroke(leader as Segment, 0.2)] : []),
      { ...frame(box, 0), filling: 'paper' } as Shape,
      {
        kind: 'text',
        text: own.text,
        at: [(box.left + box.right) / 2, box.bottom - own.heightMm * 0.2],
        anchor: 'middle',
        sizeMm,
        ...(isStation && { isBold: true }),
      },
    ]
  })
  const marks = dots.map(
    ({ id, at }): Shape =>
      supplies.has(id)
        ? ({ ...frame(boxAround(at, 2.6 * DOT_MM, 2.6 * DOT_MM), 0.7), filling: 'paper' } as Shape)
        : { kind: 'disc', at, radiusMm: DOT_MM, strokeMm: 0.4, filling: 'ink' },
  )
  const bar = scaleBar((MOST_BAR_MM * window.scale) / 1000, system)
  const barMm = (bar.lengthM * 1000) / window.scale
  const foot = heightMm - 3 - (isNarrow ? WORDS_MM : 0)
  return {
    unplaced: unplaced.map(({ id }) => id),
    scene: {
      widthMm,
      heightMm,
      label: 'The net, its stations and lines numbered',
      shapes: [
        frame(bounds, 0.4),
        ...wires,
        ...words,
        ...marks,
        stroke(
          [
            [1, foot - 1.5],
            [1, foot],
            [1 + barMm, foot],
            [1 + barMm, foot - 1.5],
          ],
          0.5,
        ),
        ...[
          { text: isNarrow ? bar.text : `${bar.text} · ${WORDS}`, at: [barMm + 4, foot] as const },
          ...(isNarrow ? [{ text: WORDS, at: [0.3, foot + WORDS_MM] as const }] : []),
        ].map((each): Shape => ({ kind: 'text', ...each, anchor: 'start', sizeMm: LINE_MM })),
      ],
    },
  }
}

const SAMPLE_MM = 16
/** Room for a letter and its stroke, mm. */
const EACH_MM = 28
const ROW_MM = 5

/** The stroke of each circuit beside its letter. */
export function strokesDrawing(count: number, widthMm: number): Scene {
  const across = Math.max(1, Math.floor(widthMm / EACH_MM))
  const shapes = Array.from({ length: count }, (_, i): readonly Shape[] => {
    const left = ((i % across) * widthMm) / across
    const y = (Math.floor(i / across) + 0.5) * ROW_MM
    const { strokeMm, dashMm } = strokeOf(i)
    return [
      { kind: 'text', text: letterOf(i), at: [left, y + 1.2], anchor: 'start', sizeMm: 3.8, isBold: true },
      {
        kind: 'way',
        points: [
          [left + 8, y],
          [left + 8 + SAMPLE_MM, y],
        ],
        strokeMm,
        ...(dashMm && { dashMm }),
      },
    ]
  })
  return {
    widthMm,
    heightMm: Math.ceil(count / across) * ROW_MM,
    label: 'Strokes of the circuits',
    shapes: shapes.flat(),
  }
}
