import { remembering } from '../memo'
import type { Block } from './layout/block'
import type { PaperSize } from './layout/paper-size'
import type { MadePaper } from './paper-jobs'
import { type Card, cardSheets } from './scene/card-sheets'

type Sheets = readonly (readonly Block[])[]

/**
 * The papers as they lie: cards of all kinds share sheets, at the place of the first of them. The same cards lie on the same sheets, as long as
 * nothing else is asked in between.
 */
export function cardLayer(): (papers: readonly MadePaper[], page: PaperSize) => readonly MadePaper[] {
  const sheetsOf = remembering(
    (page: PaperSize, label: string, ...cards: readonly (readonly Card[])[]): Sheets =>
      cardSheets(page, label, cards.flat()),
  )
  return (papers, page) => {
    const own = papers.filter(({ cards }) => cards.length > 0)
    const [first] = own
    if (!first) return papers
    const kinds = new Set(own.map(({ kind }) => kind))
    const title = kinds.size > 1 ? 'Cards' : first.kind
    const laid = {
      ...first,
      ...{ title, about: '', cards: [] },
      sheets: sheetsOf(page, title, ...own.map(({ cards }) => cards)),
      tables: own.flatMap(({ tables }) => tables),
    }
    return papers.flatMap((paper) => (paper === first ? [laid] : paper.cards.length > 0 ? [] : [paper]))
  }
}
