import { effect } from '@preact/signals'
import { lineNumber } from '../../plan/plan'
import type { ReportLine } from '../../report/report'
import type { Bench } from '../bench'
import { svgElement } from '../view/svg-element'

/** A line's tags are drawn where each has so much room on the screen, px; on the selected line in any case. */
const ROOM_PX = 60

/**
 * Draws the tags of a line: a small plate at its place, with a second rim where the pair can be opened and measured. On the selected
 * line each says its number. Those at the line's ends hang at the stations, which stand there already.
 */
export function showTags({ store, view }: Bench): () => void {
  const group = view.addGroup('tags')
  const stop = effect(() => {
    view.frame.value
    const plan = store.plan.value
    const selection = store.selection.value
    const marks: SVGElement[] = []
    for (const line of store.report.value.lines) {
      const selected = selection?.kind === 'line' && selection.id === line.id
      if (!selected && !isRoomy(line, view.metresPerPx())) continue
      const number = lineNumber(plan, line.id)
      for (const tag of line.tags.slice(1, -1)) {
        const { x, y } = view.pointOf(tag.position)
        const mark = svgElement('g', {
          class: 'tag',
          transform: `translate(${x.toFixed(1)} ${y.toFixed(1)})`,
        })
        svgElement('path', { d: 'M-4 -5H4V3L0 6L-4 3Z' }, mark)
        if (tag.isTestPoint) svgElement('path', { class: 'tag-rim', d: 'M-7 -8H7V4.5L0 9.5L-7 4.5Z' }, mark)
        if (selected) {
          const label = svgElement('text', { x: 11, y: -6 }, mark)
          label.textContent = `${number}/${tag.number}`
        }
        marks.push(mark)
      }
    }
    group.replaceChildren(...marks)
  })
  return () => {
    stop()
    group.remove()
  }
}

const isRoomy = ({ mapM, tags }: ReportLine, metresPerPx: number): boolean =>
  tags.length > 2 && mapM / metresPerPx / tags.length > ROOM_PX
