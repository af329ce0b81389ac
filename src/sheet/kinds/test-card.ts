import { nameIn } from '../../words/tongue'
import { formatTempC } from '../../words/units'
import type { Block } from '../layout/block'
import type { PaperSource } from '../paper-source'
import { callTable, loopTable } from '../tables/test-tables'

/** What each circuit should measure, and room for what it does. */
export function testCard(source: PaperSource): readonly Block[] {
  const { plan, report, system } = source
  if (report.circuits.length === 0) return []
  return [
    {
      kind: 'text',
      text:
        `Figures are for the ${plan.weather} line with the wire at ${formatTempC(plan.wireTempC, system)}. A loop that reads high has a bad splice or a break; ` +
        'one that reads low has a short on the way. Never open a circuit in use to test it.',
    },
    ...report.circuits.flatMap((circuit): readonly Block[] => {
      const tables = [loopTable(source, circuit), callTable(source, circuit)]
      return [
        { kind: 'heading', text: `${nameIn(plan, circuit.id)} · ${circuit.verdict}` },
        ...tables.filter(({ rows }) => rows.length > 0).map((table): Block => ({ kind: 'table', table })),
      ]
    }),
  ]
}
