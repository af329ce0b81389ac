import { type Choice, reachBySupply, reachByWire } from '../../budget/choices'
import type { CircuitModel } from '../../budget/circuit-model'
import type { Conditions } from '../../budget/conditions'
import { longestWay } from '../../budget/path'
import { isolated } from '../../isolated'
import { type Circuit, circuitName, stationName } from '../../plan/plan'
import { betterChoice, limitWords, reachWords } from '../../words/choice-words'
import type { Table } from '../layout/table'
import type { PaperSource } from '../paper-source'

/** How far a circuit could go with each wire, and with each supply; none where no two sets could speak over it. */
export function choiceTables(
  source: PaperSource,
  circuit: Circuit,
  model: CircuitModel,
  today: Conditions,
): readonly Table[] {
  const { plan, system, catalog } = source
  const way = longestWay(model)
  if (!way) return []
  const wires = reachByWire(model, today, catalog.wires.values())
  const supplies = reachBySupply(model, today, catalog.supplies.values())
  const nameOf = (station: string) => stationName(plan, station)
  const table = (
    what: string,
    title: string,
    list: readonly Choice[],
    isNow: (id: string) => boolean,
  ): Table => ({
    isDense: true,
    title: `${circuitName(plan, circuit)}: reach from ${nameOf(way.from)} to ${nameOf(way.to)}, ${title}`,
    columns: [
      { head: what, share: 80 },
      { head: 'Today', share: 22 },
      { head: 'At worst', share: 22 },
      { head: 'What fails first at worst', share: 62 },
    ],
    rows: list
      .toSorted(betterChoice)
      .map((choice) => [
        `${isolated(choice.name)}${isNow(choice.id) ? ' (yours now)' : ''}`,
        reachWords(choice.today, way.wireM, system),
        reachWords(choice.worst, way.wireM, system),
        limitWords(choice, list, nameOf),
      ]),
  })
  const used = new Set(circuit.lines.map((line) => plan.lines.get(line)?.wire))
  return [
    table('Wire', 'one wire on every line', wires, (id) => used.size === 1 && used.has(id)),
    table('Supply', 'each supply where yours stands', supplies, (id) => id === circuit.supply?.type),
  ].filter(({ rows }) => rows.length > 0)
}
