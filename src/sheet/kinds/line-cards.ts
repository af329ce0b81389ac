import { linesByCrew } from '../../materials/share-lines'
import type { LineId } from '../../plan/id'
import { lineName } from '../../plan/plan'
import type { SheetRoom } from '../layout/paper-size'
import { roomUnderHead } from '../layout/sheet-head'
import { lineNumber } from '../line-marks'
import type { Paper } from '../paper'
import { linesIn } from '../paper-scope'
import type { PaperSource } from '../paper-source'
import { lineCard } from './line-card'
import { type LineParts, linePartsOf } from './line-parts'
import { isShort, sharedCard } from './shared-card'

const TITLE = 'Line card'
/** With so many others a short line is tried on one sheet. */
const MOST_TRIED = 3

/** A card for each line. Two short ones of one crew share a sheet where it holds both whole: those that meet at a station sooner than others. */
export function lineCards(source: PaperSource, room: SheetRoom): readonly Paper[] {
  const all = linesIn(source).flatMap((measured) => {
    const line = source.plan.lines.get(measured.id as LineId)
    return line ? [linePartsOf(source, line, measured)] : []
  })
  const crews = linesByCrew(source.report.hours)
  const crewOf = (id: LineId) => crews.findIndex((lines) => lines.includes(id))
  const laid = new Set<LineParts>()
  return all.flatMap((parts, i): readonly Paper[] => {
    if (laid.has(parts)) return []
    const mates = isShort(parts)
      ? all
          .slice(i + 1)
          .filter(
            (each) => !laid.has(each) && isShort(each) && crewOf(each.line.id) === crewOf(parts.line.id),
          )
          .toSorted((a, b) => Number(meet(parts, b)) - Number(meet(parts, a)))
          .slice(0, MOST_TRIED)
      : []
    for (const mate of mates) {
      const about = aboutOf(source, [parts, mate])
      const card = sharedCard(source, [parts, mate], roomUnderHead(room, about, '', true))
      if (!card) continue
      laid.add(mate)
      return [{ title: TITLE, about, ...card }]
    }
    const about = aboutOf(source, [parts])
    return [{ title: TITLE, about, ...lineCard(source, parts, roomUnderHead(room, about, '', true)) }]
  })
}

const aboutOf = (source: PaperSource, all: readonly LineParts[]): string =>
  all.map(({ line }) => `Line ${lineNumber(source, line.id)}: ${lineName(source.plan, line)}`).join('; ')

const meet = ({ line: a }: LineParts, { line: b }: LineParts): boolean =>
  [a.from, a.to].some((end) => end === b.from || end === b.to)
