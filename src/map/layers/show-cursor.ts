import { pointOnLeg } from '../../geo/leg-length'
import { verticesOf } from '../../plan/plan'
import { effect } from '../../state/steady-effect'
import type { Aim, Bench } from '../bench'
import { svgElement } from '../view/svg-element'

/** Marks the place on a line that is pointed at, here or on its profile. */
export function showCursor({ store, view }: Bench): () => void {
  const group = view.addGroup('line-cursor hidden', 'signs-moving')
  svgElement('circle', { r: 9, class: 'cursor-ring' }, group)
  svgElement('circle', { r: 3, class: 'cursor-dot' }, group)
  const stop = effect(() => {
    view.frame.value
    const [cursor, selection] = [store.cursor.value, store.selection.value]
    const shown = selection?.kind === 'line' && selection.id === cursor?.line
    const line = shown && store.plan.value.lines.get(selection.id)
    const measured = line && store.report.value.lines.find(({ id }) => id === line.id)
    group.classList.toggle('hidden', !measured)
    if (!cursor || !line || !measured) return
    const vertices = verticesOf(store.plan.value, line)
    let leftM = cursor.mapM
    let leg = 0
    while (leg < measured.legs.length - 1 && leftM > measured.legs[leg]!.mapM)
      leftM -= measured.legs[leg++]!.mapM
    const part = leftM / (measured.legs[leg]!.mapM || 1)
    const { x, y } = view.pointOf(pointOnLeg(vertices[leg]!, vertices[leg + 1]!, part))
    group.setAttribute('transform', `translate(${x.toFixed(1)} ${y.toFixed(1)})`)
  })
  return () => {
    stop()
    group.remove()
  }
}

/** Follows the pointer along the selected line, so that its profile shows the place; off the line it lets go. */
export function pointAlong({ store, view }: Bench, aim: Aim | null): void {
  const selection = store.selection.peek()
  const line = selection?.kind === 'line' ? store.plan.peek().lines.get(selection.id) : undefined
  if (!line) return
  const legs = store.report.peek().lines.find(({ id }) => id === line.id)?.legs
  const path = view.pathOf(verticesOf(store.plan.peek(), line))
  let startM = 0
  let nearest = { px: aim ? aim.reachPx : 0, mapM: -1 }
  for (const [i, { mapM }] of (aim ? (legs ?? []) : []).entries()) {
    const [a, b] = [path[i]!, path[i + 1]!]
    const [dx, dy] = [b.x - a.x, b.y - a.y]
    const along = ((aim!.point.x - a.x) * dx + (aim!.point.y - a.y) * dy) / (dx * dx + dy * dy || 1)
    const part = Math.min(1, Math.max(0, along))
    const px = Math.hypot(a.x + dx * part - aim!.point.x, a.y + dy * part - aim!.point.y)
    if (px <= nearest.px) nearest = { px, mapM: startM + mapM * part }
    startM += mapM
  }
  if (nearest.mapM >= 0) store.cursor.value = { line: line.id, mapM: nearest.mapM }
  else if (store.cursor.peek()) store.cursor.value = null
}
