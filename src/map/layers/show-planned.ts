import { asPlanned } from '../../plan/as-laid-records'
import { verticesOf } from '../../plan/plan'
import type { Bench } from '../bench'
import { boundsOf, meets } from '../view/line-path'
import { svgElement } from '../view/svg-element'
import { showLineMarks } from './line-marks'

/** Shows, as a thin line, how a line was planned that lies another way. */
export function showPlanned(bench: Bench): () => void {
  const { store, view } = bench
  return showLineMarks(
    bench,
    'as-planned',
    ({ id }) => {
      const plan = store.plan.value
      const line = plan.lines.get(id)
      const planned = line && asPlanned(plan, line)
      if (!planned) return null
      return {
        from: [plan.field, line, plan.stations.get(line.from), plan.stations.get(line.to)],
        draw: () => {
          const path = view.pathOf(verticesOf(plan, planned))
          const d = `M${path.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`
          return meets(boundsOf(path), view.drawBox())
            ? [svgElement('path', { class: 'planned-way', d })]
            : []
        },
      }
    },
    { levels: ['wire', 'wire-moving'], under: 'lines' },
  )
}
