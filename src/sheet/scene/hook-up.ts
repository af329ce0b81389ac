import type { Box, Point } from '../../figure/geometry'
import type { Part } from './card-parts'
import { frame, type Shape, stroke } from './scene'
import { setText, textShapes } from './set-text'

/** A pair as it comes in: what it is, where it comes from, and its two posts. */
export interface WireEnd {
  readonly name: string
  readonly from: string
  /** Their numbers, or a letter where they are no posts of the terminal block. */
  readonly posts: readonly [number | string, number | string]
  /** The second post goes to a rod in the ground. */
  readonly isEarth: boolean
}

/** What is tied to the joined wires: a set, a supply, a port of a unit. */
export interface Equipment {
  readonly what: string
  /** In the first wire, before what comes after it: a battery in one leg. */
  readonly inOneLeg?: true
}

/** Wires that are joined at a station, and what hangs on them. */
export interface HookUp {
  readonly title: string
  readonly ends: readonly WireEnd[]
  readonly equipment: readonly Equipment[]
}

const WORD_MM = 2.6
const POST_MM = 1.6
/** From the first post of a pair to its second, and from one pair to the next. */
const APART_MM = 4
const PITCH_MM = 9.4
/** From the top of a pair's words, or of a box, to its first wire. */
const FIRST_MM = (PITCH_MM - APART_MM) / 2
/** Where things stand across, as parts of a card's width. */
const POST_AT = 0.43
const BUS_AT = [0.52, 0.555] as const
const BOX_AT = 0.62

/** More pairs than this in one drawing would not fit on a card: the rest is drawn below, and says what it is joined with. */
export const MOST_ENDS = 5

/** One hook-up drawn: pairs at the left with their posts, what they are tied to at the right. Like wires are joined. */
export function hookUpPart({ title, ends, equipment }: HookUp, widthMm: number): Part {
  const postX = widthMm * POST_AT
  const bus = BUS_AT.map((part) => part * widthMm) as [number, number]
  const boxLeft = widthMm * BOX_AT
  const name = setText(title, widthMm, WORD_MM + 0.2, true)
  const top = title ? name.heightMm + 1 : 0.6

  const boxes = equipment.map(({ what }) => {
    const set = setText(what, widthMm - boxLeft - 8, WORD_MM)
    return { set, heightMm: Math.max(PITCH_MM, set.heightMm + 2.4) }
  })
  const endWords = ends.map((end) => {
    const own = setText(end.name, postX - 6.5, WORD_MM, true)
    const from = setText(end.from, postX - 6.5, WORD_MM)
    return { own, from, heightMm: Math.max(PITCH_MM, own.heightMm + from.heightMm + 1) }
  })
  const shapes: Shape[] = [...textShapes(name, [0, 0])]
  const taps: { readonly y: number; readonly wire: 0 | 1 }[] = []

  let y = top
  for (const [i, { own, from, heightMm }] of endWords.entries()) {
    const { posts, isEarth } = ends[i]!
    const first = y + FIRST_MM
    shapes.push(...textShapes(own, [0, y + 0.2]), ...textShapes(from, [0, y + 0.2 + own.heightMm]))
    for (const wire of [0, 1] as const) {
      const at: Point = [postX, first + wire * APART_MM]
      const isRod = isEarth && wire === 1
      shapes.push(
        stroke([[postX - 4, at[1]], at], 0.5),
        stroke([at, [bus[wire], at[1]]], 0.5),
        { kind: 'disc', at, radiusMm: POST_MM, strokeMm: 0.35, filling: 'paper' },
        {
          kind: 'text',
          text: String(posts[wire]),
          at: [postX, at[1] + 0.75],
          anchor: 'middle',
          sizeMm: String(posts[wire]).length > 2 ? 1.5 : 2.1,
          isBold: true,
        },
        ...(isRod ? rod([postX - 4, at[1]]) : []),
      )
      taps.push({ y: at[1], wire })
    }
    y += heightMm
  }
  const endsMm = y - top

  y = top
  let feedY: number | undefined
  // What stands by itself is tied where it stands.
  const isTied = ends.length + boxes.length > 1
  for (const [i, { set, heightMm }] of boxes.entries()) {
    const { inOneLeg } = equipment[i]!
    const box: Box = { left: boxLeft, right: widthMm - 0.3, top: y, bottom: y + heightMm }
    const first = y + FIRST_MM
    const joint = boxLeft - 2.4
    shapes.push(frame(box, 0.4), ...textShapes(set, [boxLeft + 6.5, y + (heightMm - set.heightMm) / 2]))
    for (const wire of isTied ? ([0, 1] as const) : []) {
      const at = first + wire * APART_MM
      // What stands in one leg hands the first wire on to what comes after it.
      const isHandedOn = inOneLeg && wire === 1
      const isFed = wire === 0 && feedY !== undefined
      const way: readonly Point[] = isHandedOn
        ? [
            [boxLeft, at],
            [joint, at],
          ]
        : isFed
          ? [
              [joint, feedY!],
              [joint, at],
              [boxLeft, at],
            ]
          : [
              [bus[wire], at],
              [boxLeft, at],
            ]
      shapes.push(stroke(way, 0.5), {
        kind: 'text',
        text: inOneLeg ? (wire === 0 ? 'in' : 'out') : `L${wire + 1}`,
        at: [boxLeft + 1, at + 0.8],
        anchor: 'start',
        sizeMm: 2.2,
      })
      if (!isHandedOn && !isFed) taps.push({ y: at, wire })
      if (isHandedOn) feedY = at
      else if (isFed) feedY = undefined
    }
    y += heightMm + 1.2
  }
  const boxesMm = boxes.length > 0 ? y - top - 1.2 : 0

  for (const wire of [0, 1] as const) {
    const own = taps.filter((tap) => tap.wire === wire)
    const ys = own.map((tap) => tap.y)
    if (own.length > 1)
      shapes.push(
        stroke(
          [
            [bus[wire], Math.min(...ys)],
            [bus[wire], Math.max(...ys)],
          ],
          0.5,
        ),
      )
    // A dot where three ways or more meet: a crossing without one is no joint.
    const ways = (each: number) =>
      ys.filter((other) => other === each).length +
      Number(each > Math.min(...ys)) +
      Number(each < Math.max(...ys))
    for (const each of new Set(ys.filter((one) => ways(one) > 2)))
      shapes.push({ kind: 'disc', at: [bus[wire], each], radiusMm: 0.55, strokeMm: 0.2, filling: 'ink' })
  }
  return { heightMm: top + Math.max(endsMm, boxesMm) + 1.5, shapes }
}

/** A rod in the ground: three strokes, each shorter, at the end of a wire. */
const rod = ([x, y]: Point): readonly Shape[] =>
  [1.3, 0.85, 0.4].map((half, i) =>
    stroke(
      [
        [x - i * 0.7, y - half],
        [x - i * 0.7, y + half],
      ],
      0.35,
    ),
  )
