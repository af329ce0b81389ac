import { HAZARDS } from '../../hazard/kinds'
import { HAZARD_KINDS } from '../../plan/hazard-schema'
import { LAYS } from '../../plan/lays'
import { effect } from '../../state/steady-effect'
import { LAY_WORDS } from '../../words/plan-words'
import type { Bench, MapTool } from '../bench'

/** A strip that says what the tool in hand does next, with what it can be set to and, for fingers, its keys as buttons. */
export function showHint(bench: Bench, tool: () => MapTool): { remove: () => void } {
  const { store, view } = bench
  const strip = document.createElement('div')
  strip.className = 'map-hint'
  const words = document.createElement('span')
  words.className = 'map-hint-words'
  const settings = document.createElement('span')
  settings.className = 'map-hint-settings'
  const keys = document.createElement('span')
  keys.className = 'map-hint-keys'
  strip.append(words, settings, keys)
  view.container.after(strip)

  const act = (what: () => void) => () => {
    what()
    view.container.focus({ preventScroll: true })
  }
  const lay = choice(
    'Lay',
    LAYS.map((each) => [each, LAY_WORDS[each]] as const),
    bench.lay,
    view.container,
  )
  const kind = choice(
    'Kind',
    HAZARD_KINDS.map((each) => [each, HAZARDS[each].word] as const),
    bench.hazardKind,
    view.container,
  )
  settings.append(lay.element, kind.element)

  const stop = effect(() => {
    const shownTool = store.tool.value
    words.textContent = tool().hint()
    lay.element.hidden = shownTool !== 'line'
    kind.element.hidden = shownTool !== 'hazard'
    const steps = tool().steps?.() ?? []
    strip.hidden = shownTool === 'select' && steps.length === 0 && !store.placeWanted.value
    keys.replaceChildren(...steps.map(({ words, act: what }) => keyButton(words, act(what))))
    keys.hidden = steps.length === 0
    // A measure says its figures there.
    strip.classList.toggle('under-way', !keys.hidden && shownTool !== 'measure')
  })
  return {
    remove: () => {
      stop()
      lay.stop()
      kind.stop()
      strip.remove()
    },
  }
}

function keyButton(words: string, act: () => void): HTMLButtonElement {
  const button = document.createElement('button')
  button.type = 'button'
  button.textContent = words
  button.addEventListener('click', act)
  return button
}

function choice<T extends string>(
  label: string,
  options: readonly (readonly [T, string])[],
  value: { value: T },
  thenFocus: HTMLElement,
): { element: HTMLElement; stop: () => void } {
  const element = document.createElement('label')
  const select = document.createElement('select')
  element.append(`${label} `, select)
  for (const [id, words] of options) {
    const option = document.createElement('option')
    option.value = id
    option.textContent = words
    select.append(option)
  }
  select.addEventListener('change', () => {
    value.value = select.value as T
    thenFocus.focus({ preventScroll: true })
  })
  const stop = effect(() => {
    select.value = value.value
  })
  return { element, stop }
}
