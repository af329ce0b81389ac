import type { TableJournal } from './table-journal'

/** What screens show of a shared plan's journal, as its table has it. */
export abstract class OnTable {
  readonly table: TableJournal

  constructor(table: TableJournal) {
    this.table = table
  }

  get torn() {
    return this.table.torn
  }
  get said() {
    return this.table.said
  }
  get taken() {
    return this.table.taken
  }
  get log() {
    return this.table.log
  }
  get tell() {
    return this.table.tell
  }
  get choose() {
    return this.table.choose
  }
  get everKnown() {
    return this.table.everKnown
  }
  get goBackTo() {
    return this.table.goBackTo
  }
  get filePlan() {
    return this.table.filePlan
  }
  readonly absorbNow = () => this.table.absorbNow()
  get putAway() {
    return this.table.putAway
  }
}
