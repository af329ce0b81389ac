import type { Block } from '../layout/block'
import type { PaperSource } from '../paper-source'
import { tagTable } from '../tables/tag-table'

/** Every tag of every line, in the order in which the crew hangs them. */
export function tagList(source: PaperSource): readonly Block[] {
  const { plan, report } = source
  if (report.lines.length === 0) return []
  return [
    {
      kind: 'text',
      text:
        'Write the line and the place on each tag, tie it where a hand reaches it from the ground, and let it tell nothing of whose line it is. ' +
        'The loop is what a meter at the start reads with the pair shorted at the tag: a reading between two tags puts a short between them.',
    },
    ...report.lines.flatMap((measured): readonly Block[] => {
      const line = plan.lines.get(measured.id)
      return line ? [{ kind: 'table', table: tagTable(source, line, measured) }] : []
    }),
  ]
}
