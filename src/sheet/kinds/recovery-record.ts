import type { Block } from '../layout/block'
import { linesIn } from '../paper-scope'
import type { PaperSource } from '../paper-source'
import { recoveryTable, spoolsBackTable } from '../tables/recovery-tables'

/** What must come back from each line, and room for what does. */
export function recoveryRecord(source: PaperSource): readonly Block[] {
  if (linesIn(source).length === 0) return []
  return [
    {
      kind: 'text',
      text:
        'Sets, supplies and test sets come off first, at both ends: nobody takes up a line that can still ring. Take every tag, tie, stake and ' +
        'pole fitting with the wire; cut out what is nicked and tie a knot in what is doubtful; open the roads last, when nothing hangs over them.',
    },
    { kind: 'table', table: recoveryTable(source) },
    ...[spoolsBackTable(source)]
      .filter(({ rows }) => rows.length > 0)
      .map((table): Block => ({ kind: 'table', table })),
  ]
}
