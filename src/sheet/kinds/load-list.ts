import type { Block } from '../layout/block'
import type { PaperSource } from '../paper-source'
import { carryTable, cutTable } from '../tables/spool-tables'

/** What the crew carries, and which wire goes where. */
export function loadList(source: PaperSource): readonly Block[] {
  return [carryTable(source), cutTable(source)]
    .filter(({ rows }) => rows.length > 0)
    .map((table) => ({ kind: 'table', table }))
}
