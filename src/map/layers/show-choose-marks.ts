import './together-marks.css'
import { effect } from '../../state/steady-effect'
import { propertyWords } from '../../words/property-words'
import { type ThingOnMap, thingOfKey } from '../../words/thing-of-key'
import { formatList } from '../../words/units'
import type { Bench } from '../bench'
import { isIn } from '../view/line-path'
import type { Point } from '../view/map-view'

/** Marks nearer to each other than this become one, px: a thumb would not tell them apart. */
const APART_PX = 34

interface Mark {
  readonly at: Point
  readonly things: ThingOnMap[]
  readonly keys: string[]
}

/** Marks things that wait for a choice: a press opens the choice, and where several lie close together, all that waits. */
export function showChooseMarks({ store, view }: Bench): () => void {
  const marks = document.createElement('div')
  marks.className = 'choose-marks'
  const pane = view.map.getPane('together') ?? view.map.createPane('together')
  pane.append(marks)
  // The map's own tools must not take a press on a mark for one beside it.
  for (const type of ['pointerdown', 'mousedown', 'touchstart', 'click', 'dblclick'])
    marks.addEventListener(type, (event) => event.stopPropagation())

  const gathered = (): readonly Mark[] => {
    const box = view.drawBox()
    const found: Mark[] = []
    for (const { key } of (store.sharing.value ?? store.toChoose.value)?.torn.value ?? []) {
      const thing = thingOfKey(store.plan.value, key)
      const at = thing && view.pointOf(thing.position)
      if (!at || !isIn(box, at)) continue
      const near = found.find((each) => Math.hypot(each.at.x - at.x, each.at.y - at.y) < APART_PX)
      if (!near) found.push({ at, things: [thing], keys: [key] })
      else {
        near.keys.push(key)
        if (near.things.every(({ kind, id }) => kind !== thing.kind || id !== thing.id))
          near.things.push(thing)
      }
    }
    return found
  }

  const stop = effect(() => {
    view.frame.value
    const plan = store.plan.value
    marks.replaceChildren(
      ...gathered().map(({ at, things, keys }) => {
        const [only, ...others] = things
        const button = document.createElement('button')
        button.type = 'button'
        button.textContent = others.length > 0 ? `≠ ${things.length}` : '≠'
        button.title = `Set differently by several: ${formatList(keys.map((key) => propertyWords(plan, key)))}. Choose.`
        button.setAttribute('aria-label', `${button.textContent} ${button.title}`)
        button.style.left = `${at.x.toFixed(1)}px`
        button.style.top = `${at.y.toFixed(1)}px`
        button.addEventListener('click', () => {
          const { position: _, ...selection } = only!
          // The card of the whole plan has all that waits.
          store.selection.value = others.length > 0 ? null : selection
        })
        return button
      }),
    )
  })
  return () => {
    stop()
    marks.remove()
  }
}
