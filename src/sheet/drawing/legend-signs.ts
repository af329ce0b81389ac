import { DONE_SIGNS, LAY_SIGNS } from '../../figure/legend'
import { HAZARD_KINDS } from '../../plan/hazard-schema'
import type { HazardKind } from '../../plan/plan'
import type { MapDrawing } from './map-drawing'
import { type Mark, SIGN_OF_MARK } from './map-symbols'

/** What a legend explains. */
export interface LegendSigns {
  readonly marks: readonly Mark[]
  readonly strokes: typeof LAY_SIGNS
  readonly done: typeof DONE_SIGNS
  readonly hazards: readonly HazardKind[]
}

/** A line between boards, as the legend shows it. */
export const TRUNK = ['surface', 'trunk'] as const
const STATION_MARKS = ['station', 'supply', 'board', 'exchange'] as const

/** What there is on maps that share a legend: nothing else is explained. */
export function signsOn(maps: readonly MapDrawing[]): LegendSigns {
  const stations = new Set<string>(maps.flatMap((map) => map.stations.map(({ sign }) => sign)))
  const lays = new Set(maps.flatMap(({ legs }) => legs.map(({ lay }) => lay)))
  const done = new Set(maps.flatMap((map) => map.done.map(({ sign }) => sign)))
  const hazards = new Set(maps.flatMap((map) => map.hazards.map(({ kind }) => kind)))
  const has = (part: 'bends' | 'splices' | 'tags') => maps.some((map) => map[part].length > 0)
  return {
    marks: [
      ...STATION_MARKS.filter((mark) => stations.has(SIGN_OF_MARK[mark])),
      ...(has('bends') ? (['bend'] as const) : []),
      ...(has('splices') ? (['splice'] as const) : []),
      ...(has('tags') ? (['tag'] as const) : []),
    ],
    strokes: [
      ...LAY_SIGNS.filter(([lay]) => lays.has(lay)),
      ...(maps.some(({ legs }) => legs.some(({ isTrunk }) => isTrunk)) ? [TRUNK] : []),
    ],
    done: DONE_SIGNS.filter(([sign]) => done.has(sign)),
    hazards: HAZARD_KINDS.filter((kind) => hazards.has(kind)),
  }
}

/** Rows of a legend lie so far apart, mm. */
export const LEGEND_ROW_MM = 4.6
/** An entry of a legend of its own takes so much, mm, and the norths at its right. */
export const LEGEND_ENTRY_MM = 26
const NORTHS_MM = 13
/** The norths are so high, mm. */
export const LEAST_LEGEND_MM = 13

export const legendEntriesAcross = (widthMm: number): number =>
  Math.max(1, Math.floor((widthMm - NORTHS_MM) / LEGEND_ENTRY_MM))

/** Height of a legend that stands by itself, mm. */
export const legendHeightMm = ({ marks, strokes, done, hazards }: LegendSigns, widthMm: number): number => {
  const entries = marks.length + strokes.length + done.length + hazards.length
  return Math.max(LEAST_LEGEND_MM, Math.ceil(entries / legendEntriesAcross(widthMm)) * LEGEND_ROW_MM + 1)
}
