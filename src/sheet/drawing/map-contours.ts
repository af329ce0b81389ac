import { contains, type Point } from '../../figure/geometry'
import { contourIntervalM, contourLines } from '../../terrain/contours'
import type { Patch } from '../../terrain/grid-sampler'
import { formatLengthM, unitOf } from '../../words/units'
import type { PaperSource } from '../paper-source'
import { type MapWindow, paperToPlane, toPaper } from './map-window'

/** One contour as it lies on the sheet, with its height where that is written. */
interface Contour {
  readonly points: readonly Point[]
  readonly isIndex: boolean
  readonly text?: string
  readonly at?: Point
}

/** Heights are taken so far apart on paper, mm: less than a hand can draw. */
const LATTICE_MM = 1.5

/** The contours of the ground in a map's frame; none where no height is known. */
export function contoursIn({ ground, system }: PaperSource, window: MapWindow): readonly Contour[] {
  if (!ground) return []
  const { frame, plane } = window
  const patch: Patch = {
    columns: Math.ceil((frame.right - frame.left) / LATTICE_MM) + 1,
    rows: Math.ceil((frame.bottom - frame.top) / LATTICE_MM) + 1,
    at: (across, down) =>
      plane.toPosition(
        paperToPlane(window, [
          frame.left + (frame.right - frame.left) * across,
          frame.top + (frame.bottom - frame.top) * down,
        ]),
      ),
  }
  const heightsM = ground.heightsOverM(patch)
  const intervalM = contourIntervalM(heightsM, 1 / unitOf('lengthM', system).fromSi(1))
  return contourLines(heightsM, patch, intervalM).map(({ heightM, isIndex, positions, label }) => {
    const at = label && toPaper(window, label.at)
    return {
      points: positions.map((position) => toPaper(window, position)),
      isIndex,
      ...(at && contains(frame, at) && { text: formatLengthM(heightM, system), at }),
    }
  })
}
