import type { LineId } from '../plan/id'
import { cautionText, type RingingCaution, ringingText } from '../words/caution-words'
import { tongueOf } from '../words/tongue'
import { lineNumber } from './line-marks'
import type { PaperSource } from './paper-source'

/**
 * The cautions of a large net in few lines: what several circuits share is said once, and what is about one line stands on that line's card, which
 * is named here.
 */
export function cautionsInShort(source: PaperSource): readonly string[] {
  const { plan, report, system } = source
  const say = tongueOf(plan, system)
  const shared = new Map<string, string[]>()
  const ringing: RingingCaution[] = []
  const ofLines = new Map<LineId, number>()
  for (const caution of report.cautions) {
    const line = plan.lines.get(caution.where as LineId)
    if (line) {
      ofLines.set(line.id, (ofLines.get(line.id) ?? 0) + 1)
      continue
    }
    if (caution.code === 'ringing-shock') {
      ringing.push(caution)
      continue
    }
    const text = cautionText(caution, say)
    const name = caution.where ? say.name(caution.where) : ''
    const isNamed = name !== '' && text.startsWith(`${name}: `)
    const rest = isNamed ? text.slice(name.length + 2) : text
    shared.set(rest, [...(shared.get(rest) ?? []), ...(isNamed ? [name] : [])])
  }
  const cards = [...ofLines].map(
    ([id, count]) => `${lineNumber(source, id)}${count > 1 ? ` (${count})` : ''}`,
  )
  return [
    ...(ringing.length > 0 ? [ringingText(ringing, say)] : []),
    ...[...shared].map(([rest, names]) => (names.length > 0 ? `${names.join(', ')}: ${rest}` : rest)),
    ...(cards.length > 0 ? [`Cautions about one line stand on its card: line ${cards.join(', ')}.`] : []),
  ]
}
