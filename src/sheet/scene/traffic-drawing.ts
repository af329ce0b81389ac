import type { Point } from '../../figure/geometry'
import { textWidthEm } from '../../figure/text-width'
import { between } from '../../figure/wire-strokes'
import type { Position } from '../../geo/position'
import { frame, type Scene, type Shape, stroke } from './scene'
import { fitText, setText, textShapes } from './set-text'

/** One board as a box of words, and where it stands on the ground. */
export interface TrafficBox {
  readonly name: string
  readonly words: readonly string[]
  readonly position: Position
}

/** What joins two boxes, by their places in the list. */
export interface TrafficLink {
  readonly from: number
  readonly to: number
  readonly words: string
  /** Calls go over it. */
  readonly isUsable: boolean
}

const BOX_MM = { width: 48, height: 24 } as const
const WORD_MM = 2.9
/** Labels of ways that cross in the middle stand apart: they are a little nearer to where the way begins. */
const LABEL_AT = 0.4

/** More boxes than these would lie on each other. */
export const MOST_BOXES = 8

/** Two boards or more as boxes round a middle, in the order in which they lie round it on the ground, with what joins them. */
export function trafficDrawing(
  boxes: readonly TrafficBox[],
  links: readonly TrafficLink[],
  widthMm: number,
): Scene {
  const heightMm = boxes.length === 2 ? 40 : 26 + 16 * boxes.length
  const places = placesOf(boxes, widthMm, heightMm)
  const ways = links.flatMap(({ from, to, words, isUsable }): readonly Shape[] => {
    const [a, b] = [places[from]!, places[to]!]
    const label = setText(words, 34, WORD_MM, true)
    const at = between(a, b, boxes.length === 2 ? 0.5 : LABEL_AT)
    const half = label.heightMm / 2 + 0.6
    const reach = (textWidthEm(words, true) * WORD_MM) / 2 + 1
    const plate = { left: at[0] - reach, right: at[0] + reach, top: at[1] - half, bottom: at[1] + half }
    return [
      isUsable ? stroke([a, b], 0.8) : { kind: 'way', points: [a, b], strokeMm: 0.5, dashMm: [1.5, 1.5] },
      { ...frame(plate, 0), filling: 'paper' } as Shape,
      ...textShapes(label, [at[0], at[1] - label.heightMm / 2], 'middle'),
    ]
  })
  const blocks = boxes.flatMap(({ name, words }, i): readonly Shape[] => {
    const [x, y] = places[i]!
    const box = {
      left: x - BOX_MM.width / 2,
      right: x + BOX_MM.width / 2,
      top: y - BOX_MM.height / 2,
      bottom: y + BOX_MM.height / 2,
    }
    const title = fitText(name, { widthMm: BOX_MM.width - 3, heightMm: 8.6 }, [3.5, 2.4], true)
    const below = fitText(words.join('; '), { widthMm: BOX_MM.width - 3, heightMm: 13 }, [WORD_MM, 2.1])
    return [
      { ...frame(box, 0.6), filling: 'paper' } as Shape,
      ...textShapes(title, [x, box.top + 1], 'middle'),
      ...textShapes(below, [x, box.top + 1.6 + title.heightMm], 'middle'),
    ]
  })
  return { widthMm, heightMm, label: 'Traffic diagram', shapes: [...ways, ...blocks] }
}

function placesOf(boxes: readonly TrafficBox[], widthMm: number, heightMm: number): readonly Point[] {
  const middle: Point = [widthMm / 2, heightMm / 2]
  const reach: Point = [(widthMm - BOX_MM.width) / 2 - 0.5, (heightMm - BOX_MM.height) / 2 - 0.5]
  if (boxes.length === 2) {
    const isFirstWest = boxes[0]!.position[0] <= boxes[1]!.position[0]
    return [isFirstWest ? -1 : 1, isFirstWest ? 1 : -1].map(
      (side): Point => [middle[0] + side * reach[0], middle[1]],
    )
  }
  const mean = (k: 0 | 1) => boxes.reduce((sum, { position }) => sum + position[k], 0) / boxes.length
  const [lon, lat] = [mean(0), mean(1)]
  const bearings = boxes.map(({ position }) => Math.atan2(lat - position[1], position[0] - lon))
  const order = [...boxes.keys()].sort((a, b) => bearings[a]! - bearings[b]!)
  const start = bearings[order[0]!]!
  const places: Point[] = []
  for (const [turn, i] of order.entries()) {
    const angle = start + (turn * 2 * Math.PI) / boxes.length
    places[i] = [middle[0] + reach[0] * Math.cos(angle), middle[1] + reach[1] * Math.sin(angle)]
  }
  return places
}
