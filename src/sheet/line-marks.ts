import { lineTags } from '../measure/line-tags'
import type { Line, Position } from '../plan/plan'
import type { ReportLine } from '../report/report'
import { spliceMarks } from '../report/splice-marks'
import type { PaperSource } from './paper-source'

/** Something on a line that the crew makes or hangs: a splice, or a tag. */
export interface LineMark {
  readonly kind: 'splice' | 'tag'
  /** `S2`, or a tag's `3/1`: line and place. */
  readonly name: string
  readonly groundM: number
  readonly wireM: number
  readonly legIndex: number
  readonly position: Position
  /** Which pair the splice is in, or why the tag hangs there. */
  readonly what: string
  readonly isTestPoint: boolean
}

/** Number of each line, from 1, as all papers count them. */
export const lineNumber = (source: PaperSource, id: Line['id']): number =>
  [...source.plan.lines.keys()].indexOf(id) + 1

/** The splices and tags of one line, in the order in which the crew comes to them. */
export function lineMarks(source: PaperSource, line: Line, measured: ReportLine): readonly LineMark[] {
  const number = lineNumber(source, line.id)
  const splices = spliceMarks(source.plan, line, measured).map(
    (splice): LineMark => ({
      ...splice,
      kind: 'splice',
      what: line.pairs > 1 ? `pair ${splice.pair + 1}` : '',
      isTestPoint: false,
    }),
  )
  const tags = lineTags(source.plan, measured, line).map(
    (tag): LineMark => ({
      ...tag,
      kind: 'tag',
      name: `${number}/${tag.number}`,
      what: tag.reasons.join(', '),
    }),
  )
  return [...splices, ...tags].toSorted((a, b) => a.wireM - b.wireM)
}
