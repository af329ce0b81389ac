import { hazardName } from '../hazard/kinds'
import type { WalkMark } from '../report/walk-marks'
import { directionWords } from './crossing-words'
import type { Tongue } from './tongue'
import { formatBearingDeg } from './units'

/** How a walker reads what comes: his tongue, the line's number, and the compass in his hand. */
export interface WalkTongue {
  readonly say: Tongue
  readonly lineNumber: number
  readonly north: 'magnetic' | 'true'
  readonly bearing: (trueDeg: number) => number
}

/** A bend of less than this is none to the eye, °. */
const STRAIGHT_DEG = 5

type Of<C extends WalkMark['code']> = Extract<WalkMark, { readonly code: C }>

const SAY: { readonly [C in WalkMark['code']]: (mark: Of<C>, tongue: WalkTongue) => string } = {
  bend: ({ number, turnDeg, bearingDeg }, { bearing, north }) => {
    const side = Math.abs(turnDeg) < STRAIGHT_DEG ? 'straight on' : turnDeg < 0 ? 'left' : 'right'
    return `bend ${number}, then ${side} to ${formatBearingDeg(bearing(bearingDeg))} ${north}`
  },
  crossing: ({ kind, name, does }, { say }) =>
    `${hazardName(name, kind)}${does ? `: ${directionWords(does, say)}` : ''}`,
  tag: ({ number, isTestPoint }, { lineNumber }) =>
    `tag ${lineNumber}/${number}${isTestPoint ? ', test point' : ''}`,
  splice: ({ spools }) => `splice: spool ${spools[0]} ends, go on with ${spools[1]}`,
  end: ({ station }, { say }) => `${say.name(station)}, the end of the line`,
}

/** What comes, in words that follow a distance: `bend 2, then left to 214° magnetic`. */
export const walkMarkWords = (mark: WalkMark, tongue: WalkTongue): string =>
  (SAY[mark.code] as (mark: WalkMark, tongue: WalkTongue) => string)(mark, tongue)
