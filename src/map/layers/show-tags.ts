import { TAG_SIGN, TEST_POINT_RIM } from '../../figure/line-signs'
import { signAt } from '../../figure/sign-at'
import { lineNumber } from '../../plan/plan'
import type { ReportLine } from '../../report/report'
import type { Bench } from '../bench'
import { isIn } from '../view/line-path'
import type { Point } from '../view/map-view'
import { svgElement } from '../view/svg-element'
import { showLineMarks } from './line-marks'

/** A line's tags are drawn where each has so much room on the screen, px; on the selected line in any case. */
const ROOM_PX = 60

/** Numbers nearer than this to the one before would run into it, px. */
const NUMBER_PX = 26

/**
 * Draws the tags of a line. On the selected line they say their numbers, where there is room. Those at the line's ends hang at the
 * stations, which stand there already.
 */
export function showTags(bench: Bench): () => void {
  const { store, view } = bench
  return showLineMarks(bench, 'tags', (line, isSelected) => {
    const plan = store.plan.value
    if (!isSelected && !isRoomy(line, view.metresPerPx())) return null
    const number = isSelected ? lineNumber(plan, line.id) : 0
    return {
      from: [line.tags, number],
      draw: () => {
        let last: Point | null = null
        const box = view.drawBox()
        return line.tags.slice(1, -1).flatMap((tag) => {
          const place = view.pointOf(tag.position)
          if (!isIn(box, place)) return []
          const isFree = !last || Math.hypot(place.x - last.x, place.y - last.y) >= NUMBER_PX
          if (isSelected && isFree) last = place
          return [tagPlate(place, tag.isTestPoint, isSelected && isFree ? `${number}/${tag.number}` : '')]
        })
      },
    }
  })
}

export function tagPlate(at: Point, isTestPoint: boolean, words = ''): SVGElement {
  const mark = svgElement('g', { class: 'tag' })
  svgElement('path', { d: signAt(TAG_SIGN, at) }, mark)
  if (isTestPoint) svgElement('path', { class: 'tag-rim', d: signAt(TEST_POINT_RIM, at) }, mark)
  if (words)
    svgElement('text', { x: (at.x + 10).toFixed(1), y: (at.y + 19).toFixed(1) }, mark).textContent = words
  return mark
}

const isRoomy = ({ mapM, tags }: ReportLine, metresPerPx: number): boolean =>
  tags.length > 2 && mapM / metresPerPx / tags.length > ROOM_PX
