import { conditionsOf } from '../../budget/conditions'
import { circuitPlots } from '../../figure/circuit-plots'
import { measurePlan } from '../../measure/measure-line'
import { circuitName, stationName } from '../../plan/plan'
import { circuitNetwork } from '../../report/circuit-network'
import { PLOT_HEIGHT_MM } from '../drawing/plot-size'
import type { Block } from '../layout/block'
import { circuitsIn } from '../paper-scope'
import type { PaperSource } from '../paper-source'
import { choiceTables } from '../tables/choice-tables'

/** Plots that stand side by side. */
const ACROSS = 2

/** What each circuit does along its wire and over the band of speech, as plots, and how far each wire and each supply would take it. */
export function circuitFigures(source: PaperSource): readonly Block[] {
  const { plan, catalog, ground, system } = source
  const measured = measurePlan(plan, ground)
  const today = conditionsOf(plan.weather, plan.wireTempC)
  return circuitsIn(source).flatMap(({ id }): readonly Block[] => {
    const circuit = plan.circuits.get(id)
    if (!circuit) return []
    const model = circuitNetwork(plan, circuit, catalog, measured)
    const plots = circuitPlots(model, today, (station) => stationName(plan, station), system)
    const rows = Array.from({ length: Math.ceil(plots.length / ACROSS) }, (_, k) =>
      plots.slice(k * ACROSS, (k + 1) * ACROSS),
    )
    return [
      { kind: 'heading', text: circuitName(plan, circuit) },
      ...(rows.length === 0
        ? [{ kind: 'text', text: 'It neither rings, speaks nor carries current as it stands.' } as const]
        : []),
      ...rows.map(
        (row): Block => ({
          kind: 'drawing',
          heightMm: PLOT_HEIGHT_MM,
          drawing: { kind: 'plots', plots: row },
        }),
      ),
      ...choiceTables(source, circuit, model, today).map((table): Block => ({ kind: 'table', table })),
    ]
  })
}
