import { computed } from '@preact/signals'
import { isUnfinished } from '../../budget/circuit-notes'
import type { Position } from '../../geo/position'
import type { LineId } from '../../plan/id'
import { endsOf, type Plan } from '../../plan/plan'
import { effect } from '../../state/steady-effect'
import { formatCount } from '../../words/units'
import type { Bench } from '../bench'
import type { Moving } from '../view/moving'

/** From the pointer to the label, px: clear of the finger. */
const OFF_PX = { x: 18, y: 14 }

/** As wide as the label may be, px: so near to the right edge it hangs on the other side. */
const WIDEST_PX = 340

/** Beside what the hand draws or drags: how much wire it takes so far, and whether its circuits would work. */
export function showRubberLabel({ store, view, ghost, moving }: Bench): () => void {
  const label = document.createElement('div')
  label.className = 'rubber-label'
  label.setAttribute('aria-hidden', 'true')
  view.container.append(label)
  const held = computed(() => {
    const drawn = ghost.value?.line
    const plan = store.atHand.value
    if (drawn) return endOf(plan, drawn)
    return store.dragging.value ? movedThings(plan, store.settled.value, moving.value) : undefined
  })
  /** The same value as long as it is the same lines. */
  const heldLines = computed(() => held.value && [...held.value.lines].join(' '))
  const stopWriting = effect(() => {
    const report = store.report.value
    const { run, name } = store.tongue.value
    const ids = heldLines.value?.split(' ')
    label.hidden = !ids
    if (!ids) return
    const plan = store.plan.value
    const isHeld = (id: string) => ids.includes(id)
    const lines = report.lines.filter(({ id }) => isHeld(id))
    const wireM = lines.reduce((sum, line) => sum + line.wireM, 0)
    const circuits = report.circuits.filter(({ id }) => plan.circuits.get(id)?.lines.some(isHeld))
    const standings = circuits.map(({ id, verdict, missing }) => ({
      name: name(id),
      standing: isUnfinished(missing) ? 'not finished' : verdict,
    }))
    const text = [
      lines.length > 0 ? `${run(wireM)} of wire` : '',
      ...(standings.length > MOST_NAMED
        ? [countsOf(standings)]
        : standings.map((each) => `${each.name} ${each.standing}`)),
    ]
      .filter(Boolean)
      .join(' · ')
    if (text !== label.textContent) label.textContent = text
    label.hidden = text === ''
  })
  const stopFollowing = effect(() => {
    view.frame.value
    if (!held.value) return
    const { x, y } = view.map.layerPointToContainerPoint(asTuple(view.pointOf(held.value.at)))
    // Moved by its own width, which nobody asks for: the page would lay itself out at every move.
    const isAtEdge = x + OFF_PX.x + WIDEST_PX > view.map.getSize().x
    const across = isAtEdge ? `max(4px, calc(${x - OFF_PX.x}px - 100%))` : `${x + OFF_PX.x}px`
    label.style.transform = `translate(${across}, ${y + OFF_PX.y}px)`
  })
  return () => {
    stopWriting()
    stopFollowing()
    label.remove()
  }
}

/** More circuits than these are counted by how they stand. */
const MOST_NAMED = 2

const asTuple = ({ x, y }: { readonly x: number; readonly y: number }): [number, number] => [x, y]

interface Held {
  readonly at: Position
  readonly lines: ReadonlySet<LineId>
}

function endOf(plan: Plan, id: LineId): Held | undefined {
  const line = plan.lines.get(id)
  return line && { at: endsOf(plan, line)[1], lines: new Set([id]) }
}

/** What a drag has made other than it was: where it is, and the lines that it changes. */
function movedThings(plan: Plan, settled: Plan, moving: Moving): Held | undefined {
  const stations = new Set(
    [...moving.stations].filter((id) => plan.stations.get(id) !== settled.stations.get(id)),
  )
  const lines = [...moving.lines]
    .flatMap((id) => plan.lines.get(id) ?? [])
    .filter((line) => settled.lines.get(line.id) !== line || stations.has(line.from) || stations.has(line.to))
  const [station] = stations
  const bend = lines.flatMap((line) => {
    const before = settled.lines.get(line.id)?.bends ?? []
    return line.bends.filter((each, index) => each !== before[index]).slice(0, 1)
  })[0]
  const at = station ? plan.stations.get(station)!.position : bend
  return at && { at, lines: new Set(lines.map(({ id }) => id)) }
}

function countsOf(standings: readonly { readonly standing: string }[]): string {
  const works = standings.filter(({ standing }) => standing === 'works').length
  return works === standings.length
    ? `${formatCount(works, 'circuit')} work`
    : `${works} of ${formatCount(standings.length, 'circuit')} work`
}
