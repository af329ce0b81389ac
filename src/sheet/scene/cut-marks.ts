import type { Box, Point } from '../../figure/geometry'
import type { PageSize } from '../layout/paper-size'
import { type Shape, stroke } from './scene'

const MARK_MM = 3.5
/** Between a mark and the corner that it points to. */
const CLEAR_MM = 0.6
const OUTWARD = [-1, 1] as const

/** Marks at the corners of what is cut out, two at each corner and both outside it; none that would lie on a neighbour, along its edge or off the sheet. */
export function cutMarks(boxes: readonly Box[], sheet: PageSize): readonly Shape[] {
  const isFree = ([x, y]: Point) =>
    x >= 0 &&
    y >= 0 &&
    x <= sheet.widthMm &&
    y <= sheet.heightMm &&
    !boxes.some(({ left, right, top, bottom }) => x >= left && x <= right && y >= top && y <= bottom)
  const marks = boxes.flatMap(({ left, right, top, bottom }) =>
    [left, right].flatMap((x, i) =>
      [top, bottom].flatMap((y, j): readonly (readonly [Point, Point])[] => [
        [
          [x + OUTWARD[i]! * CLEAR_MM, y],
          [x + OUTWARD[i]! * MARK_MM, y],
        ],
        [
          [x, y + OUTWARD[j]! * CLEAR_MM],
          [x, y + OUTWARD[j]! * MARK_MM],
        ],
      ]),
    ),
  )
  return marks.filter((mark) => mark.every(isFree)).map((mark) => stroke(mark, 0.25))
}

/** Dashed lines along the edges of what is cut out. */
export const cutLines = (boxes: readonly Box[]): readonly Shape[] =>
  boxes.map(({ left, right, top, bottom }) => ({
    kind: 'way',
    points: [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
    ],
    isClosed: true,
    strokeMm: 0.2,
    dashMm: [1, 2],
  }))
