import type { Box } from '../../figure/geometry'

/** Bands beside the frame: the grid's labels stand above and to the left, scale and legend below. */
const GRID_BAND_MM = 4.5
const FOOT_BAND_MM = 14.5

/** The frame of a map inside a drawing of this size, mm. */
export const frameIn = (widthMm: number, heightMm: number): Box => ({
  left: GRID_BAND_MM,
  top: GRID_BAND_MM,
  right: widthMm - 0.3,
  bottom: heightMm - FOOT_BAND_MM,
})
