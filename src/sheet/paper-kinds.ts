import { stationName } from '../plan/plan'
import { boardCard, boardsIn } from './kinds/board-card'
import { circuitDiagram } from './kinds/circuit-diagram'
import { circuitFigures } from './kinds/circuit-figures'
import { directory, directoryBlocks } from './kinds/directory'
import { faultCard } from './kinds/fault-card'
import { howFarMap } from './kinds/how-far'
import { lineCards } from './kinds/line-cards'
import { loadList } from './kinds/load-list'
import { netAtAGlance } from './kinds/net-at-a-glance'
import { recoveryRecord } from './kinds/recovery-record'
import { stationCards } from './kinds/station-cards'
import { tagLabels } from './kinds/tag-labels'
import { testRecord } from './kinds/test-record'
import { trafficDiagram } from './kinds/traffic-diagram'
import { waysMap } from './kinds/ways-map'
import type { Block } from './layout/block'
import { USUAL } from './layout/fewest-sheets'
import type { PaperSize, SheetRoom } from './layout/paper-size'
import type { Paper } from './paper'
import type { PaperName } from './paper-names'
import type { PaperSource } from './paper-source'
import { fitCards, partsOfBlocks } from './scene/card-blocks'
import type { Card } from './scene/card-sheets'
import { paperCards } from './scene/paper-card'

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
  'Line cards': lineCards,
  'Circuit diagram': (source, room) => [
    { title: 'Circuit diagram', about: '', blocks: circuitDiagram(source, room) },
  ],
  'Load list': (source, room) => [{ title: 'Load list', about: '', blocks: loadList(source, room) }],
  'Test record': (source, room) => [{ title: 'Test record', about: '', blocks: testRecord(source, room) }],
  'Station cards': (source, { page }) => [
    { title: 'Station cards', about: '', blocks: [], cards: stationCards(source, page) },
  ],
  'Board cards': (source, { page }) =>
    boardsIn(source).map((each) => {
      const about = stationName(source.plan, each.board.station)
      const blocks = boardCard(source, each)
      return { title: 'Board card', about, blocks, ...onCards(source, page, `Board: ${about}`, blocks) }
    }),
  Directory: (source, room) => [
    {
      title: 'Directory',
      about: '',
      blocks: directory(source, room),
      ...onCards(source, room.page, 'Directory', directoryBlocks(source, USUAL)),
    },
  ],
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

/** More cards than this of one thing are in the way: it has sheets instead. */
const MOST_CARDS = 2

/** What hangs beside a telephone is set on cards where few hold it, and always where a sheet is no larger than a card. */
function onCards(
  source: PaperSource,
  page: PaperSize,
  name: string,
  blocks: readonly Block[],
): { readonly cards?: readonly Card[] } {
  const isSmall = page.name === 'A6'
  if (blocks.length === 0 || (!isSmall && !fitCards(blocks))) return {}
  const cards = paperCards(source, page, { name }, (widthMm) => partsOfBlocks(blocks, widthMm))
  return isSmall || cards.length <= MOST_CARDS ? { cards } : {}
}
