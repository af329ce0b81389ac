import type { Picture } from '../../figure/code-picture'
import type { Box, Point } from '../../figure/geometry'
import { textWidthEm } from '../../figure/text-width'

/** One thing drawn on a card, mm from its left and from its top. */
export type Shape =
  | {
      readonly kind: 'text'
      readonly text: string
      /** On the base line. */
      readonly at: Point
      readonly anchor: 'start' | 'middle' | 'end'
      readonly sizeMm: number
      readonly isBold?: boolean
      /** The revision stands after it, as soon as it is typed. */
      readonly isRevised?: true
    }
  | {
      readonly kind: 'way'
      readonly points: readonly Point[]
      readonly isClosed?: boolean
      /** 0: no stroke. */
      readonly strokeMm: number
      readonly dashMm?: readonly number[]
      readonly filling?: 'ink' | 'paper'
    }
  | {
      readonly kind: 'disc'
      readonly at: Point
      readonly radiusMm: number
      readonly strokeMm: number
      readonly filling: 'ink' | 'paper'
    }
  /** The picture that carries the plan, its upper left corner; it is drawn on the page, as the revision is typed there. */
  | { readonly kind: 'picture'; readonly at: Point; readonly sizeMm: number }
  /** A code that opens a part of the plan, its upper left corner. */
  | { readonly kind: 'code'; readonly at: Point; readonly sizeMm: number; readonly picture: Picture }

/** A drawing of words and strokes whose every place is known without a screen, so that a test can find what lies over what. */
export interface Scene {
  readonly widthMm: number
  readonly heightMm: number
  /** What it is, for who hears the page read out. */
  readonly label: string
  readonly shapes: readonly Shape[]
}

/** Side of the picture of the plan on paper, mm: no module of it is less than 0.33 mm. */
export const PICTURE_MM = 16.5

/** Room for ` · revision ` and a revision of twelve letters, in ems. */
const REVISION_EM = 16

/** How far a letter reaches above and below its base line, in ems. */
const ASCENT = 0.78
const DESCENT = 0.24

/** What a shape covers, mm. */
export function boxOf(shape: Shape): Box {
  switch (shape.kind) {
    case 'text': {
      const { at, anchor, sizeMm, text, isBold, isRevised } = shape
      const widthMm = (textWidthEm(text, isBold) + (isRevised ? REVISION_EM : 0)) * sizeMm
      const left = at[0] - (anchor === 'start' ? 0 : anchor === 'middle' ? widthMm / 2 : widthMm)
      const [top, bottom] = [at[1] - ASCENT * sizeMm, at[1] + DESCENT * sizeMm]
      return { left, right: left + widthMm, top, bottom }
    }
    case 'way': {
      const xs = shape.points.map(([x]) => x)
      const ys = shape.points.map(([, y]) => y)
      const half = shape.strokeMm / 2
      return {
        left: Math.min(...xs) - half,
        right: Math.max(...xs) + half,
        top: Math.min(...ys) - half,
        bottom: Math.max(...ys) + half,
      }
    }
    case 'disc': {
      const reach = shape.radiusMm + shape.strokeMm / 2
      const [x, y] = shape.at
      return { left: x - reach, right: x + reach, top: y - reach, bottom: y + reach }
    }
    case 'picture':
    case 'code': {
      const [x, y] = shape.at
      return { left: x, right: x + shape.sizeMm, top: y, bottom: y + shape.sizeMm }
    }
  }
}

const moved = ([x, y]: Point, [dx, dy]: Point): Point => [x + dx, y + dy]

/** The same shapes, so far to the right and down. */
export const shifted = (shapes: readonly Shape[], by: Point): readonly Shape[] =>
  shapes.map((shape) =>
    shape.kind === 'way'
      ? { ...shape, points: shape.points.map((point) => moved(point, by)) }
      : { ...shape, at: moved(shape.at, by) },
  )

/** The same shape, so many times as large about the origin, with strokes of the same width. */
export function scaled(shape: Shape, factor: number): Shape {
  const at = ([x, y]: Point): Point => [x * factor, y * factor]
  switch (shape.kind) {
    case 'way':
      return { ...shape, points: shape.points.map(at) }
    case 'disc':
      return { ...shape, at: at(shape.at), radiusMm: shape.radiusMm * factor }
    case 'text':
    case 'picture':
    case 'code':
      return { ...shape, at: at(shape.at), sizeMm: shape.sizeMm * factor }
  }
}

export const stroke = (points: readonly Point[], strokeMm: number): Shape => ({
  kind: 'way',
  points,
  strokeMm,
})

export const frame = ({ left, top, right, bottom }: Box, strokeMm: number): Shape => ({
  kind: 'way',
  points: [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ],
  isClosed: true,
  strokeMm,
})
