import { effect } from '../../state/steady-effect'
import { nameIn } from '../../words/tongue'
import { formatDistanceM } from '../../words/units'
import type { Bench } from '../bench'

/** From the pointer to the label, px: clear of the finger. */
const OFF_PX = { x: 18, y: 14 }

/** Beside the free end of a line under way: how much wire it takes so far, and whether its circuit would work. */
export function showRubberLabel({ store, view, ghost }: Bench): () => void {
  const label = document.createElement('div')
  label.className = 'rubber-label'
  label.setAttribute('aria-hidden', 'true')
  view.container.append(label)
  const stop = effect(() => {
    const id = ghost.value?.line
    view.frame.value
    const plan = store.plan.value
    const line = id && plan.lines.get(id)
    label.hidden = !line
    if (!line) return
    const { lines, circuits } = store.report.value
    const measured = lines.find((each) => each.id === id)
    const circuit = circuits.find((each) => plan.circuits.get(each.id)?.lines.includes(line.id))
    const hasSets = (circuit && (plan.circuits.get(circuit.id)?.sets.size ?? 0)) ?? 0
    const end = view.pointOf(plan.stations.get(line.to)!.position)
    const { x, y } = view.map.layerPointToContainerPoint([end.x, end.y])
    label.textContent = [
      measured ? `${formatDistanceM(measured.wireM, store.units.value)} of wire` : '',
      circuit && hasSets > 1 ? `${nameIn(store.plan.peek(), circuit.id)} ${circuit.verdict}` : '',
    ]
      .filter(Boolean)
      .join(' · ')
    const left =
      x + OFF_PX.x + label.offsetWidth > view.map.getSize().x
        ? x - OFF_PX.x - label.offsetWidth
        : x + OFF_PX.x
    label.style.transform = `translate(${left}px, ${y + OFF_PX.y}px)`
  })
  return () => {
    stop()
    label.remove()
  }
}
