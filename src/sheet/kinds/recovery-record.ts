import type { Block } from '../layout/block'
import { inFewestSheets, type Letters, TIGHT, tableBlock, USUAL } from '../layout/fewest-sheets'
import type { SheetRoom } from '../layout/paper-size'
import { linesIn } from '../paper-scope'
import type { PaperSource } from '../paper-source'
import { recoveryTable, spoolsBackTables } from '../tables/recovery-tables'

/** What must come back from each line, and room for what does; in small print where that saves sheets. */
export const recoveryRecord = (source: PaperSource, room: SheetRoom): readonly Block[] =>
  inFewestSheets((letters) => blocksIn(source, letters), [USUAL, TIGHT], room)

function blocksIn(source: PaperSource, letters: Letters): readonly Block[] {
  if (linesIn(source).length === 0) return []
  return [
    {
      kind: 'text',
      isSmall: letters.isTight ?? false,
      text:
        'Sets, supplies and test sets come off first, at both ends: nobody takes up a line that can still ring. Take every tag, tie, stake and ' +
        'pole fitting with the wire; cut out what is nicked and tie a knot in what is doubtful; open the roads last, when nothing hangs over them.',
    },
    ...[recoveryTable(source), ...spoolsBackTables(source)].flatMap((table) => tableBlock(table, letters)),
  ]
}
