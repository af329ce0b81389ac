import type { LineId } from '../plan/id'
import { lineName, stationName } from '../plan/plan'
import { boardCard, boardsIn } from './kinds/board-card'
import { circuitDiagram } from './kinds/circuit-diagram'
import { circuitFigures } from './kinds/circuit-figures'
import { directory } from './kinds/directory'
import { faultCard } from './kinds/fault-card'
import { howFarMap } from './kinds/how-far'
import { lineCard } from './kinds/line-card'
import { loadList } from './kinds/load-list'
import { netAtAGlance } from './kinds/net-at-a-glance'
import { recoveryRecord } from './kinds/recovery-record'
import { stationCards } from './kinds/station-cards'
import { tagLabels } from './kinds/tag-labels'
import { testRecord } from './kinds/test-record'
import { trafficDiagram } from './kinds/traffic-diagram'
import { waysMap } from './kinds/ways-map'
import type { Block } from './layout/block'
import type { SheetRoom } from './layout/paper-size'
import type { SheetCode } from './layout/sheet-code'
import { roomUnderHead } from './layout/sheet-head'
import { lineNumber } from './line-marks'
import type { PaperName } from './paper-names'
import { linesIn } from './paper-scope'
import type { PaperSource } from './paper-source'

/** One document: its sheets are counted by themselves, so that it can go to those who need it. */
export interface Paper {
  readonly title: string
  /** Which one of its kind; empty where there is but one. */
  readonly about: string
  readonly blocks: readonly Block[]
  /** Stands on its first sheet. */
  readonly code?: SheetCode
  /** Drawn to the edges of the sheet, for what is cut or comes off it: no head, no foot, no margin. */
  readonly isBare?: true
}

export const PAPER_KINDS: Readonly<
  Record<PaperName, (source: PaperSource, room: SheetRoom) => readonly Paper[]>
> = {
  'Net at a glance': (source, room) => [
    { title: 'Net at a glance', about: '', ...netAtAGlance(source, room) },
  ],
  'How far': (source, room) => {
    const { far } = source
    return far ? [{ title: 'How far', about: `From ${far.from}`, blocks: howFarMap(source, far, room) }] : []
  },
  'Ways of a line': (source, room) => {
    const { ways } = source
    return ways ? [{ title: 'Ways of a line', about: ways.title, blocks: waysMap(source, ways, room) }] : []
  },
  'Line cards': (source, room) =>
    linesIn(source).flatMap((measured) => {
      const line = source.plan.lines.get(measured.id as LineId)
      if (!line) return []
      const about = `Line ${lineNumber(source, line.id)}: ${lineName(source.plan, line)}`
      return [
        {
          title: 'Line card',
          about,
          ...lineCard(source, line, measured, roomUnderHead(room, about, '', true)),
        },
      ]
    }),
  'Circuit diagram': (source, room) => [
    { title: 'Circuit diagram', about: '', blocks: circuitDiagram(source, room) },
  ],
  'Load list': (source, room) => [{ title: 'Load list', about: '', blocks: loadList(source, room) }],
  'Test record': (source, room) => [{ title: 'Test record', about: '', blocks: testRecord(source, room) }],
  'Station cards': (source, { page }) => [
    { title: 'Station cards', about: '', isBare: true, blocks: stationCards(source, page) },
  ],
  'Board cards': (source) =>
    boardsIn(source).map((each) => ({
      title: 'Board card',
      about: stationName(source.plan, each.board.station),
      blocks: boardCard(source, each),
    })),
  Directory: (source, room) => [{ title: 'Directory', about: '', blocks: directory(source, room) }],
  'Traffic diagram': (source, room) => [
    { title: 'Traffic diagram', about: '', blocks: trafficDiagram(source, room) },
  ],
  Labels: (source, { page }) => [
    { title: 'Labels', about: '', isBare: true, blocks: tagLabels(source, page) },
  ],
  'Fault card': (source, room) => [{ title: 'Fault card', about: '', blocks: faultCard(source, room) }],
  'Recovery record': (source, room) => [
    { title: 'Recovery record', about: '', blocks: recoveryRecord(source, room) },
  ],
  'Circuit figures': (source) => [{ title: 'Circuit figures', about: '', blocks: circuitFigures(source) }],
}
