import './together-marks.css'
import '../../figure/hand-tones.css'
import { signOfHand } from '../../figure/hand-sign'
import type { Position } from '../../geo/position'
import { isolated } from '../../isolated'
import { effect } from '../../state/steady-effect'
import { ageWords } from '../../words/age-words'
import { thingOfKey } from '../../words/thing-of-key'
import type { Bench } from '../bench'
import { isIn } from '../view/line-path'
import { svgElement } from '../view/svg-element'
import { showChooseMarks } from './show-choose-marks'
import { showOtherChoices } from './show-other-choices'

/** Ages stand beside places of crews: they are told anew so often, ms. */
const AGES_MS = 30_000

/** Where others are and what they have open, and which things wait for a choice: a press on such a mark opens the choice. */
export function showTogether(bench: Bench): () => void {
  const { store, view } = bench
  const stopOthers = showOtherChoices(bench)
  const group = view.addGroup('hand-signs', 'signs-moving')
  const stopMarks = showChooseMarks(bench)
  const drawHands = () => {
    const plan = store.plan.peek()
    const sharing = store.sharing.peek()
    const box = view.drawBox()
    const signs: SVGElement[] = []
    const names = sharing?.names() ?? []
    const put = (position: Position, name: string, label: string, isSpot: boolean) => {
      const { x, y } = view.pointOf(position)
      if (!isIn(box, { x, y })) return
      const { path, tone, letters } = signOfHand(names, name)
      const sign = svgElement('g', {
        class: `hand-sign hand-shape hand-tone-${tone}${isSpot ? ' spot' : ''}`,
        transform: `translate(${(x + (isSpot ? 0 : 20)).toFixed(1)} ${(y + (isSpot ? 0 : 18)).toFixed(1)})`,
      })
      svgElement('circle', { r: 11 }, sign)
      svgElement('path', { d: path }, sign)
      if (letters) svgElement('text', { y: 2.4 }, sign).textContent = letters
      svgElement('title', {}, sign).textContent = label
      // Beside a selected thing stands its own name: whose sign it is the panel says.
      if (isSpot) svgElement('text', { class: 'hand-label', y: 23 }, sign).textContent = label
      signs.push(sign)
    }
    for (const { name, on } of sharing?.others.peek() ?? []) {
      const thing = on ? thingOfKey(plan, on) : undefined
      if (thing) put(thing.position, name, name, false)
    }
    for (const { name, spot } of sharing?.spots.peek() ?? [])
      if (spot)
        put(spot.position, name, `${isolated(shortened(name))}, ${ageWords(Date.now() - spot.atMs)}`, true)
    group.replaceChildren(...signs)
  }
  const stopHands = effect(() => {
    view.frame.value
    store.plan.value
    store.sharing.value?.others.value
    store.sharing.value?.spots.value
    drawHands()
  })
  const ages = setInterval(drawHands, AGES_MS)
  return () => {
    stopOthers()
    stopMarks()
    stopHands()
    clearInterval(ages)
    group.remove()
  }
}

const LONGEST = 18
const shortened = (name: string): string => (name.length > LONGEST ? `${name.slice(0, LONGEST - 1)}…` : name)
