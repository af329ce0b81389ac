import { isAboutSplices } from '../../report/splice-cautions'
import { cautionText } from '../../words/caution-words'
import { leftSentence, rateSentence } from '../../words/done-words'
import { tongueOf } from '../../words/tongue'
import { hoursSentence, loadedSentence, sharedWords, smallCrewSentence } from '../../words/work-words'
import type { Block } from '../layout/block'
import { inFewestSheets, type Letters, TIGHT, tableBlock, USUAL } from '../layout/fewest-sheets'
import type { SheetRoom } from '../layout/paper-size'
import type { Table } from '../layout/table'
import { inColumns } from '../layout/table-columns'
import type { PaperSource } from '../paper-source'
import { hoursTable, leftTable, loadTable, massTable } from '../tables/load-tables'
import { carryTable, cutTables } from '../tables/spool-tables'
import { crewTable, packingOf, tripTable } from '../tables/trip-tables'

/** What the crew carries, which wire goes where, and how long it takes; in small print where that saves sheets. */
export function loadList(source: PaperSource, room: SheetRoom): readonly Block[] {
  return inFewestSheets((letters) => blocksIn(source, room, letters), [USUAL, TIGHT], room)
}

function blocksIn(source: PaperSource, room: SheetRoom, letters: Letters): readonly Block[] {
  const { report, plan, system } = source
  const say = tongueOf(plan, system)
  const { loads, hours, left } = report
  const isSmall = letters.isTight ?? false
  const shared = sharedWords(loads, say)
  const flags = report.cautions.filter(isAboutSplices).map((caution) => cautionText(caution, say))
  const time = [
    hoursSentence(hours),
    smallCrewSentence(hours),
    ...(hours.learned ?? []).map((rate) => rateSentence(rate, say)),
    'The rates are allowances; ground, weather and practice decide.',
  ]
  const packing = packingOf(source)
  const trips = packing.crews.map((each) =>
    tripTable(
      source,
      each,
      packing.rows.filter(({ crew }) => crew === each.crew),
    ),
  )
  const table = (of: Table): readonly Block[] => tableBlock(of, letters)
  const list = (of: Table): readonly Block[] => (isSmall ? inColumns(of, room, letters) : table(of))
  const box = (title: string, sentences: readonly string[]): readonly Block[] =>
    sentences.length > 0 ? [{ kind: 'box', title, sentences, isSmall }] : []
  return [
    { kind: 'text', isSmall, text: loadedSentence(packing.crews, loads.perPersonKg, loads.totalKg, say) },
    ...(left
      ? [{ kind: 'text', isSmall, text: leftSentence(left, say) } as const, ...table(leftTable(source, left))]
      : []),
    ...table(massTable(source, loads)),
    ...list(loadTable(source, loads)),
    ...[crewTable(source, packing.crews), ...trips, carryTable(source)].flatMap(table),
    ...cutTables(source).flatMap(list),
    ...box('Too heavy for one', shared),
    ...box('Splices', flags),
    { kind: 'text', isSmall, text: time.filter(Boolean).join(' ') },
    ...table(hoursTable(source, hours)),
  ]
}
