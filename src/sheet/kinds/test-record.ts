import { cautionText } from '../../words/caution-words'
import { nameIn, tongueOf } from '../../words/tongue'
import { formatTempC } from '../../words/units'
import { verdictSentence } from '../../words/verdict-words'
import type { Block } from '../layout/block'
import { inFewestSheets, type Letters, TIGHT, tableBlock, USUAL } from '../layout/fewest-sheets'
import type { SheetRoom } from '../layout/paper-size'
import { circuitsIn } from '../paper-scope'
import type { PaperSource } from '../paper-source'
import { trafficTable } from '../tables/jack-table'
import { callTable, loopTable } from '../tables/test-tables'
import { trunksIn, trunkTestTable } from '../tables/trunk-tables'
import { boardsIn } from './board-card'

/** What each circuit should measure, and room for what it does; in small print where that saves sheets. */
export const testRecord = (source: PaperSource, room: SheetRoom): readonly Block[] =>
  inFewestSheets((letters) => blocksIn(source, letters), [USUAL, TIGHT], room)

function blocksIn(source: PaperSource, letters: Letters): readonly Block[] {
  const isSmall = letters.isTight ?? false
  const { plan, report, odds, system } = source
  const circuits = circuitsIn(source)
  if (circuits.length === 0) return []
  const say = tongueOf(plan, system)
  return [
    {
      kind: 'text',
      isSmall,
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
          isSmall,
          text: [
            `It ${verdictSentence(circuit, odds.get(circuit.id), say)}`,
            drawn?.over ? `Its lines are tested pair by pair, with the circuits that it rides on.` : '',
            ...report.cautions
              .filter(({ where }) => where === circuit.id)
              .map((caution) => cautionText(caution, say)),
          ]
            .filter(Boolean)
            .join(' '),
        },
        ...tables.flatMap((table) => tableBlock(table, letters)),
      ]
    }),
    ...tableBlock(trunkTestTable(source, trunksIn(source, boardsIn(source))), letters),
  ]
}
