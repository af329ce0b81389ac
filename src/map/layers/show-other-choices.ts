import './together-marks.css'
import '../../figure/hand-tones.css'
import { signOfHand } from '../../figure/hand-sign'
import { effect } from '../../state/steady-effect'
import { pathOfChoice } from '../../words/path-of-choice'
import type { Bench } from '../bench'
import { pathData } from '../view/path-data'
import { svgElement } from '../view/svg-element'

/** Draws beside what holds the places and ways that others set and that wait for a choice, dashed and in the tone of whoever set them. */
export function showOtherChoices({ store, view }: Bench): () => void {
  const group = view.addGroup('other-choices', 'signs-moving')
  const stop = effect(() => {
    view.frame.value
    const plan = store.plan.value
    const toChoose = store.sharing.value ?? store.toChoose.value
    const names = toChoose?.names?.() ?? []
    group.replaceChildren(
      ...(toChoose?.torn.value ?? []).flatMap(({ key, choices }) =>
        choices.slice(1).flatMap(({ who, value }) => {
          const { path, isPlace } = pathOfChoice(plan, key, value)
          if (path.length < 2) return []
          const { tone } = signOfHand(names, (who === 'You' && store.sharing.peek()?.name.value) || who)
          const sign = svgElement('g', { class: `other-choice hand-tone-${tone}` })
          svgElement('path', { d: pathData(view.pathOf(path)) }, sign)
          svgElement('title', {}, sign).textContent = who
          if (isPlace) {
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
