/** In units of the drawing, whose letters are 11 high: on paper 0.28 mm each, so that they come to 9 pt. */
export const PLOT_SIZE = { width: 310, height: 190 }
export const PLOT_MM_PER_UNIT = 0.28
/** Room for the title above a plot, mm. */
const TITLE_MM = 6

export const PLOT_HEIGHT_MM = PLOT_SIZE.height * PLOT_MM_PER_UNIT + TITLE_MM
