import type { Position } from '../geo/position'
import { type Line, lineNumber as numberInPlan } from '../plan/plan'
import type { ReportLine } from '../report/report'
import { tagReasons } from '../words/tag-words'
import { tongueOf } from '../words/tongue'
import type { PaperSource } from './paper-source'

/** Something on a line that the crew makes or hangs: a splice, or a tag. */
export interface LineMark {
  readonly kind: 'splice' | 'tag'
  /** Of a tag: the pair can be opened and measured there. */
  readonly isTestPoint?: boolean
  /** `S2`, or a tag's `3/1`: line and place. */
  readonly name: string
  readonly groundM: number
  readonly wireM: number
  readonly legIndex: number
  readonly position: Position
  /** Which pairs are spliced and which spool goes on, or why the tag hangs there. */
  readonly what: string
}

/** Number of each line, from 1, as all papers count them. */
export const lineNumber = (source: PaperSource, id: Line['id']): number => numberInPlan(source.plan, id)

/** The splices of one line, in the order in which the crew comes to them. */
function spliceMarks(line: Line, measured: ReportLine): readonly LineMark[] {
  return measured.splices.map((splices, i) => ({
    ...splices[0],
    kind: 'splice',
    name: `S${i + 1}`,
    what: splices
      .map(({ pair, spools }) => `${line.pairs > 1 ? `pair ${pair + 1} ` : ''}to spool ${spools[1]}`)
      .join(', '),
  }))
}

/** The tags of one line. */
export function tagMarks(source: PaperSource, line: Line, measured: ReportLine): readonly LineMark[] {
  const number = lineNumber(source, line.id)
  return measured.tags.map((tag) => ({
    ...tag,
    kind: 'tag',
    name: `${number}/${tag.number}`,
    what: tagReasons(tag.reasons, tongueOf(source.plan, source.system)),
  }))
}

/** The splices and tags of one line, in the order in which the crew comes to them. */
export const lineMarks = (source: PaperSource, line: Line, measured: ReportLine): readonly LineMark[] =>
  [...spliceMarks(line, measured), ...tagMarks(source, line, measured)].toSorted((a, b) => a.wireM - b.wireM)
