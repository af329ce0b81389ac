import type { LineTag } from '../../measure/line-tags'
import { lineNumber } from '../../plan/plan'
import type { ReportLine } from '../../report/report'
import type { Bench } from '../bench'
import { svgElement } from '../view/svg-element'
import { showLineMarks } from './line-marks'

/** A line's tags are drawn where each has so much room on the screen, px; on the selected line in any case. */
const ROOM_PX = 60

/**
 * Draws the tags of a line: a small plate at its place, with a second rim where the pair can be opened and measured. On the selected
 * line each says its number. Those at the line's ends hang at the stations, which stand there already.
 */
export function showTags(bench: Bench): () => void {
  const { store, view } = bench
  return showLineMarks(bench, 'tags', (line, isSelected) => {
    const plan = store.plan.value
    if (!isSelected && !isRoomy(line, view.metresPerPx())) return null
    const number = isSelected ? lineNumber(plan, line.id) : 0
    return {
      from: [line.tags, number],
      draw: () =>
        line.tags.slice(1, -1).map((tag) => plate(bench, tag, isSelected ? `${number}/${tag.number}` : '')),
    }
  })
}

function plate({ view }: Bench, { position, isTestPoint }: LineTag, words: string): SVGElement {
  const { x, y } = view.pointOf(position)
  const mark = svgElement('g', { class: 'tag', transform: `translate(${x.toFixed(1)} ${y.toFixed(1)})` })
  svgElement('path', { d: 'M-4 -5H4V3L0 6L-4 3Z' }, mark)
  if (isTestPoint) svgElement('path', { class: 'tag-rim', d: 'M-7 -8H7V4.5L0 9.5L-7 4.5Z' }, mark)
  if (words) svgElement('text', { x: 11, y: -6 }, mark).textContent = words
  return mark
}

const isRoomy = ({ mapM, tags }: ReportLine, metresPerPx: number): boolean =>
  tags.length > 2 && mapM / metresPerPx / tags.length > ROOM_PX
