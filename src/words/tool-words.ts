/** The tools as they are called on their buttons and read aloud. */
export const TOOL_WORDS = {
  select: 'Select',
  station: 'Station',
  line: 'Line',
  hazard: 'Hazard',
  measure: 'Measure',
} as const
