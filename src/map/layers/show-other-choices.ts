import './together-marks.css'
import '../../figure/hand-tones.css'
import { signOfHand } from '../../figure/hand-sign'
import type { Position } from '../../geo/position'
import { placeOf } from '../../journal/keys'
import type { LineId, StationId } from '../../plan/id'
import { endsOf, type Hazard, type Line, type Plan } from '../../plan/plan'
import type { ToChoose } from '../../share/sharing'
import { effect } from '../../state/steady-effect'
import type { Bench } from '../bench'
import { pathData } from '../view/path-data'
import { svgElement } from '../view/svg-element'

/** Draws beside what holds the places and ways that others set and that wait for a choice, dashed and in the tone of whoever set them. */
export function showOtherChoices({ store, view }: Bench): () => void {
  const group = view.addGroup('other-choices', 'signs-moving')
  const stop = effect(() => {
    view.frame.value
    const plan = store.plan.value
    const toChoose: ToChoose | null = store.sharing.value ?? store.toChoose.value
    const names = toChoose?.names?.() ?? []
    group.replaceChildren(
      ...(toChoose?.torn.value ?? []).flatMap(({ key, choices }) =>
        choices.slice(1).flatMap(({ who, value }) => {
          const path = pathOfChoice(plan, key, value)
          if (path.length < 2) return []
          const { tone } = signOfHand(names, (who === 'You' && store.sharing.peek()?.name.value) || who)
          const sign = svgElement('g', { class: `other-choice hand-tone-${tone}` })
          svgElement('path', { d: pathData(view.pathOf(path)) }, sign)
          svgElement('title', {}, sign).textContent = who
          if (placeOf(key)?.member === 'position') {
            const { x, y } = view.pointOf(path[1]!)
            svgElement('circle', { cx: x.toFixed(1), cy: y.toFixed(1), r: 9 }, sign)
          }
          return [sign]
        }),
      ),
    )
  })
  return () => {
    stop()
    group.remove()
  }
}

/** Where a choice that does not hold would have a thing lie; of a station the way there from where it stands. Empty for what lies nowhere. */
function pathOfChoice(plan: Plan, key: string, value: unknown): readonly Position[] {
  const { kind, id = '', member } = placeOf(key) ?? {}
  if (value === undefined) return []
  const line = kind === 'lines' && member === 'route' ? plan.lines.get(id as LineId) : undefined
  if (line) {
    const [from, to] = endsOf(plan, line)
    return [from, ...(value as Pick<Line, 'bends'>).bends, to]
  }
  const station =
    kind === 'stations' && member === 'position' ? plan.stations.get(id as StationId) : undefined
  if (station) return [station.position, value as Position]
  if (kind !== 'hazards' || member !== 'geometry') return []
  const { type, coordinates } = value as Hazard['geometry']
  return (type === 'Polygon' ? (coordinates[0] ?? []) : coordinates) as readonly Position[]
}
