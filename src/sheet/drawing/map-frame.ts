import type { Box } from '../../figure/geometry'

/** Bands beside the frame: the grid's labels stand above and to the left, scale and legend below. */
const GRID_BAND_MM = 4.5
const FOOT_BAND_MM = 14.5
/** On a map of less width the legend stands below the scale, in three columns, on a narrower one in two. */
const NARROW_MM = 130
const NARROW_FOOT_BAND_MM = 38
const NARROWER_MM = 70
const NARROWER_FOOT_BAND_MM = 54
/** Below a map that shares its legend with another, its scale alone. */
const BARE_FOOT_BAND_MM = 5

/** Whether the legend of a map finds no room beside its scale. */
export const isNarrow = (frame: Box): boolean => frame.right - frame.left < NARROW_MM

/** Whether scale and norths find no room beside each other but in a narrow column. */
export const isNarrowest = (frame: Box): boolean => frame.right - frame.left < NARROWER_MM - GRID_BAND_MM

/** Columns in which a legend below its scale stands. */
export const legendColumns = (frame: Box): 2 | 3 => (frame.right - frame.left < NARROWER_MM ? 2 : 3)

const footBandMm = (widthMm: number, hasLegend: boolean) =>
  !hasLegend
    ? BARE_FOOT_BAND_MM
    : widthMm < NARROWER_MM
      ? NARROWER_FOOT_BAND_MM
      : widthMm < NARROW_MM
        ? NARROW_FOOT_BAND_MM
        : FOOT_BAND_MM

/** The frame of a map inside a drawing of this size, mm, with its own legend below it or only its scale. */
export const frameIn = (widthMm: number, heightMm: number, hasLegend = true): Box => ({
  left: GRID_BAND_MM,
  top: GRID_BAND_MM,
  right: widthMm - 0.3,
  bottom: heightMm - footBandMm(widthMm, hasLegend),
})
