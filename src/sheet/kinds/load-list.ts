import { DEFAULT_LOADS, loadsOf } from '../../materials/loads'
import { flagSplices } from '../../materials/splice-limits'
import { formatMassKg } from '../../report/quantity-text'
import type { Block } from '../layout/block'
import type { PaperSource } from '../paper-source'
import { hoursTable, loadTable, massTable, planHours } from '../tables/load-tables'
import { carryTable, cutTable } from '../tables/spool-tables'

const plural = (count: number, one: string) => `${count} ${one}${count === 1 ? '' : 's'}`

/** What the crew carries, which wire goes where, and how long it takes. */
export function loadList(source: PaperSource): readonly Block[] {
  const { plan, report, catalog, system } = source
  const loads = loadsOf(plan, catalog, report.spools)
  const hours = planHours(source)
  const shared = loads.shared.map(
    ({ what, eachKg, people }) => `${what}: ${formatMassKg(eachKg, system)}, ${people} people carry it`,
  )
  const flags = report.lines.flatMap((line) =>
    flagSplices(line, line.pieces).map(({ text }) => `${line.name}: ${text}`),
  )
  const carried =
    `${formatMassKg(loads.totalKg, system)} in all: ${plural(loads.personLoads, 'load')} of at most ` +
    `${formatMassKg(DEFAULT_LOADS.perPersonKg, system)}, ${plural(loads.trips, 'trip')} for ${DEFAULT_LOADS.people} people.`
  const time =
    `A crew of ${hours.crew} on foot by day: ${hours.totalH.toFixed(1)} h to lay the net and put its stations in, ` +
    `${hours.recoveryH.toFixed(1)} h to take it up again. The rates are allowances; ground, weather and practice decide.`
  const tables = [massTable(source, loads), loadTable(source, loads), carryTable(source), cutTable(source)]
  const table = (of: (typeof tables)[number]): readonly Block[] =>
    of.rows.length > 0 ? [{ kind: 'table', table: of }] : []
  return [
    { kind: 'text', text: carried },
    ...tables.flatMap(table),
    ...(shared.length > 0 ? [{ kind: 'box', title: 'Too heavy for one', sentences: shared } as const] : []),
    ...(flags.length > 0 ? [{ kind: 'box', title: 'Splices', sentences: flags } as const] : []),
    { kind: 'text', text: time },
    ...table(hoursTable(source, hours)),
  ]
}
