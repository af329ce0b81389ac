import type { Stretch } from '../../field/stretches'
import type { DoneSign } from '../../figure/legend'
import { wayOfWire } from '../../measure/place-on-line'
import type { ReportLine } from '../../report/report'
import type { Bench } from '../bench'
import { boundsOf, meets } from '../view/line-path'
import type { Point } from '../view/map-view'
import { svgElement } from '../view/svg-element'
import { type LineMarks, showLineMarks } from './line-marks'

/** What each sign is made of: strokes under the wire, so that they edge it, or over it. */
const STROKES: Readonly<
  Record<DoneSign, { readonly under: readonly string[]; readonly over: readonly string[] }>
> = {
  laid: { under: ['done-edges'], over: [] },
  tested: { under: [], over: ['done-beads'] },
  recovered: { under: [], over: ['done-gone', 'done-trace'] },
}

/** Shows on the wire what of it lies, what was tested and what was taken up again. */
export function showDone(bench: Bench): () => void {
  const wire = ['wire', 'wire-moving'] as const
  const stops = [
    showLineMarks(bench, 'done-under', (line) => marksOf(bench, line, 'under'), {
      levels: wire,
      under: 'lines',
    }),
    showLineMarks(bench, 'done-over', (line) => marksOf(bench, line, 'over'), { levels: wire, under: '' }),
  ]
  return () => {
    for (const stop of stops) stop()
  }
}

function marksOf({ store, view }: Bench, report: ReportLine, where: 'under' | 'over'): LineMarks | null {
  const { laid, tested, recovered } = report.field.done
  if (laid.length + tested.length + recovered.length === 0) return null
  const plan = store.plan.value
  const line = plan.lines.get(report.id)
  if (!line) return null
  const strokes = (sign: DoneSign, stretches: readonly Stretch[]) =>
    STROKES[sign][where].flatMap((name) =>
      stretches.flatMap((stretch) => {
        const path = view.pathOf(wayOfWire(plan, report, line, stretch))
        return meets(boundsOf(path), view.drawBox()) ? [stroke(name, path)] : []
      }),
    )
  return {
    from: [report, line, plan.stations.get(line.from), plan.stations.get(line.to)],
    draw: () => [...strokes('laid', laid), ...strokes('recovered', recovered), ...strokes('tested', tested)],
  }
}

const stroke = (name: string, path: readonly Point[]): SVGElement =>
  svgElement('path', {
    class: name,
    d: `M${path.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`,
  })

/** A piece of a sign for the legend, between two points. */
export const doneStrokes = (sign: DoneSign, ends: readonly Point[], where: 'under' | 'over'): SVGElement[] =>
  [...(sign === 'tested' ? STROKES.laid[where] : []), ...STROKES[sign][where]].map((name) =>
    stroke(name, ends),
  )
