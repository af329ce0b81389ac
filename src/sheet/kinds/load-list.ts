import { isAboutSplices } from '../../report/splice-cautions'
import { cautionText } from '../../words/caution-words'
import { leftSentence, rateSentence } from '../../words/done-words'
import { tongueOf } from '../../words/tongue'
import { hoursSentence, loadedSentence, sharedWords, smallCrewSentence } from '../../words/work-words'
import type { Block } from '../layout/block'
import type { PaperSource } from '../paper-source'
import { hoursTable, leftTable, loadTable, massTable } from '../tables/load-tables'
import { carryTable, cutTable } from '../tables/spool-tables'
import { crewTable, packingOf, tripTable } from '../tables/trip-tables'

/** What the crew carries, which wire goes where, and how long it takes. */
export function loadList(source: PaperSource): readonly Block[] {
  const { report, plan, system } = source
  const say = tongueOf(plan, system)
  const { loads, hours, left } = report
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
  const tables = [
    massTable(source, loads),
    loadTable(source, loads),
    crewTable(source, packing.crews),
    ...trips,
    carryTable(source),
    cutTable(source),
  ]
  const table = (of: (typeof tables)[number]): readonly Block[] =>
    of.rows.length > 0 ? [{ kind: 'table', table: of }] : []
  return [
    { kind: 'text', text: loadedSentence(packing.crews, loads.perPersonKg, loads.totalKg, say) },
    ...(left
      ? [{ kind: 'text', text: leftSentence(left, say) } as const, ...table(leftTable(source, left))]
      : []),
    ...tables.flatMap(table),
    ...(shared.length > 0 ? [{ kind: 'box', title: 'Too heavy for one', sentences: shared } as const] : []),
    ...(flags.length > 0 ? [{ kind: 'box', title: 'Splices', sentences: flags } as const] : []),
    { kind: 'text', text: time.filter(Boolean).join(' ') },
    ...table(hoursTable(source, hours)),
  ]
}
