import { cautionText } from '../../words/caution-words'
import { nameIn, tongueOf } from '../../words/tongue'
import { formatTempC } from '../../words/units'
import { verdictSentence } from '../../words/verdict-words'
import type { Block } from '../layout/block'
import { circuitsIn } from '../paper-scope'
import type { PaperSource } from '../paper-source'
import { trafficTable } from '../tables/jack-table'
import { callTable, loopTable } from '../tables/test-tables'

/** What each circuit should measure, and room for what it does. */
export function testRecord(source: PaperSource): readonly Block[] {
  const { plan, report, odds, system } = source
  const circuits = circuitsIn(source)
  if (circuits.length === 0) return []
  const say = tongueOf(plan, system)
  return [
    {
      kind: 'text',
      text:
        `Figures are for the ${plan.weather} line with the wire at ${formatTempC(plan.wireTempC, system)}. A loop that reads high has a bad splice or a break; ` +
        'one that reads low has a short on the way. Never open a circuit in use to test it.',
    },
    ...circuits.flatMap((circuit): readonly Block[] => {
      const drawn = plan.circuits.get(circuit.id)
      const traffic = drawn && circuit.switchboard ? [trafficTable(plan, drawn, circuit.switchboard)] : []
      const tables = [loopTable(source, circuit), callTable(source, circuit), ...traffic]
      return [
        { kind: 'heading', text: nameIn(plan, circuit.id) },
        {
          kind: 'text',
          text: [
            `It ${verdictSentence(circuit, odds.get(circuit.id), say)}`,
            ...report.cautions
              .filter(({ where }) => where === circuit.id)
              .map((caution) => cautionText(caution, say)),
          ].join(' '),
        },
        ...tables.filter(({ rows }) => rows.length > 0).map((table): Block => ({ kind: 'table', table })),
      ]
    }),
  ]
}
