import type { Odds } from '../budget/odds'
import { planFingerprint } from '../files/plan-fingerprint'
import type { Tell } from '../jobs/protocol'
import { measurePlan } from '../measure/measure-line'
import type { Plan } from '../plan/plan'
import { laidCatalog } from '../report/learned-of'
import type { Report } from '../report/report'
import type { ElevationGrid } from '../terrain/elevation-grid'
import { type GridGround, groundFromGrids } from '../terrain/ground-from-grids'
import { readyForGrids } from '../terrain/ready-grids'
import type { UnitSystem } from '../words/units'
import type { FarOnPaper } from './far-on-paper'
import { codeOfScope } from './kinds/paper-code'
import { type Block, blocksWithin, heightOfMm } from './layout/block'
import { breakIntoSheets } from './layout/break-sheets'
import type { SheetRoom } from './layout/paper-size'
import { besideCode, type SheetCode } from './layout/sheet-code'
import { roomUnderHead } from './layout/sheet-head'
import type { Table } from './layout/table'
import type { Paper } from './paper'
import { PAPER_KINDS } from './paper-kinds'
import { FOR_SMALL_SHEETS, PAPER_NAMES, type PaperName } from './paper-names'
import type { PaperScope } from './paper-scope'
import type { PaperSource } from './paper-source'
import { withPrintableNames } from './printable-names'
import type { Card } from './scene/card-sheets'
import type { WaysOnPaper } from './ways-on-paper'

/** What papers are made of. The report comes with the question, so that no paper can disagree with the screen. */
export interface PaperQuestion {
  readonly plan: Plan
  readonly report: Report
  readonly odds: ReadonlyMap<string, Odds>
  readonly system: UnitSystem
  readonly date: string
  readonly scope: PaperScope
  /** Name of the sheets of labels; the first that there are for the size where there is none of that name. */
  readonly labels: string
  readonly far: FarOnPaper | null
  readonly ways: WaysOnPaper | null
  /** Address of the program; empty where others cannot reach it. */
  readonly program: string
  readonly room: SheetRoom
  /** Only these are made. */
  readonly kinds: readonly PaperName[]
}

/** One document, broken into sheets. */
export interface MadePaper {
  readonly kind: PaperName
  readonly title: string
  readonly about: string
  readonly fingerprint: string
  readonly isBare: boolean
  readonly sheets: readonly (readonly Block[])[]
  /** Which of them, from 0, hold what is too high for any sheet, so that it goes on over the next page. */
  readonly overfull: readonly number[]
  /** What it has in the place of sheets where it is cut into cards. */
  readonly cards: readonly Card[]
  readonly code?: SheetCode
  /** Its tables whole, for a file. */
  readonly tables: readonly Table[]
}

const ROUNDING_MM = 0.01

let ground: GridGround | undefined

/** Makes the papers one after the other, each sent as soon as it is made. */
export const PAPER_JOBS = {
  grids: async (grids: readonly ElevationGrid[]): Promise<void> => {
    await readyForGrids(grids)
    ground = grids.length > 0 ? groundFromGrids(grids) : undefined
  },
  papers: ({ room, kinds, ...question }: PaperQuestion, tell: Tell<MadePaper>): void => {
    const catalog = laidCatalog(question.plan, measurePlan(question.plan, ground))
    const fingerprint = planFingerprint(question.plan)
    const source = withPrintableNames({ ...question, ground, catalog, fingerprint })
    const { plan } = source
    const fits = (name: PaperName) => room.page.name !== 'A6' || FOR_SMALL_SHEETS.includes(name)
    for (const kind of PAPER_NAMES.filter((name) => kinds.includes(name) && fits(name))) {
      // What a paper is about takes a line of its head; a longer one is the paper's own affair.
      const under = roomUnderHead(room, kind, plan.title)
      for (const paper of PAPER_KINDS[kind](source, under)) {
        const { title, about, cards = [], isBare = cards.length > 0 } = paper
        const { blocks, code, own } = withCode(source, paper, under)
        const sheets = cards.length > 0 ? [] : breakIntoSheets(blocks, own)
        const overfull = sheets.flatMap((each, i) =>
          !isBare && heightOfMm(each, own.widthMm) > own.heightMm + ROUNDING_MM ? [i] : [],
        )
        tell.part({
          ...{ kind, title, about, isBare, fingerprint, sheets, cards, overfull, tables: tablesOf(paper) },
          ...(code && { code }),
        })
      }
    }
  },
}

/** A paper with its own code, or with that of all it is made for where it takes no sheet more for it. */
function withCode(source: PaperSource, { about, blocks, code, cards, isBare }: Paper, under: SheetRoom) {
  const own = roomUnderHead(under, about, '', code !== undefined)
  const plain = { blocks, own, ...(code && { code }) }
  const wider = code || cards || isBare || blocks.length === 0 ? undefined : codeOfScope(source)
  if (!wider) return plain
  const room = roomUnderHead(under, about, '', true)
  const coded = [besideCode([{ kind: 'text', text: wider.words, isSmall: true }], room), ...blocks]
  return breakIntoSheets(coded, room).length > breakIntoSheets(blocks, own).length
    ? plain
    : { blocks: coded, own: room, code: wider }
}

function tablesOf({ about, blocks }: Paper): readonly Table[] {
  const tables: Table[] = []
  for (const block of blocksWithin(blocks)) {
    if (block.kind !== 'table') continue
    const last = tables.at(-1)
    // A table that stands in several columns is one in a file.
    if (last && last.title === block.table.title)
      tables[tables.length - 1] = { ...last, rows: [...last.rows, ...block.table.rows] }
    else tables.push(block.table)
  }
  // What stands on the sheet of one line would else bear one name for all lines.
  return about ? tables.map((table) => ({ ...table, title: `${about}: ${table.title}` })) : tables
}
