import { type CsvTable, formatTableCsv } from '../files/table-csv'
import { download } from './save-plan-file'

/** By this mark a spreadsheet knows that the ohms and the degrees are UTF-8. */
const UTF8_MARK = '\ufeff'

/** Puts a table among the downloads as comma-separated values. */
export const saveTable = (name: string, table: CsvTable): void =>
  download(
    `${name.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, '') || 'table'}.csv`,
    UTF8_MARK + formatTableCsv(table),
    'text/csv',
  )
