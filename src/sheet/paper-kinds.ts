import { lineName } from '../plan/plan'
import { circuitDiagram } from './kinds/circuit-diagram'
import { circuitFigures } from './kinds/circuit-figures'
import { faultCard } from './kinds/fault-card'
import { lineSheet } from './kinds/line-sheet'
import { loadList } from './kinds/load-list'
import { routeMap } from './kinds/route-map'
import { tagList } from './kinds/tag-list'
import { testCard } from './kinds/test-card'
import type { Block } from './layout/block'
import type { SheetRoom } from './layout/paper-size'
import { lineNumber } from './line-marks'
import type { PaperName } from './paper-names'
import type { PaperSource } from './paper-source'

/** One document: its sheets are counted by themselves, so that it can go to those who need it. */
export interface Paper {
  readonly title: string
  /** Which one of its kind; empty where there is but one. */
  readonly about: string
  readonly blocks: readonly Block[]
}

export const PAPER_KINDS: Readonly<
  Record<PaperName, (source: PaperSource, room: SheetRoom) => readonly Paper[]>
> = {
  'Line route map': (source, room) => [
    { title: 'Line route map', about: '', blocks: routeMap(source, room) },
  ],
  'Route sheets': (source, room) =>
    source.report.lines.flatMap((measured) => {
      const line = source.plan.lines.get(measured.id)
      if (!line) return []
      const about = `Line ${lineNumber(source, line.id)}: ${lineName(source.plan, line)}`
      return [{ title: 'Route sheet', about, blocks: lineSheet(source, line, measured, room) }]
    }),
  'Circuit diagram': (source, room) => [
    { title: 'Circuit diagram', about: '', blocks: circuitDiagram(source, room) },
  ],
  'Load list': (source) => [{ title: 'Load list', about: '', blocks: loadList(source) }],
  'Tag list': (source) => [{ title: 'Tag list', about: '', blocks: tagList(source) }],
  'Test card': (source) => [{ title: 'Test card', about: '', blocks: testCard(source) }],
  'Circuit figures': (source) => [{ title: 'Circuit figures', about: '', blocks: circuitFigures(source) }],
  'Fault card': (source, room) => [{ title: 'Fault card', about: '', blocks: faultCard(source, room) }],
}
