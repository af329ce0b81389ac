import { effect } from '@preact/signals'
import type { Plan } from '../../plan/plan'
import type { Bench } from '../bench'
import { outlineOf, sceneOf } from '../tools/scene'
import type { MapView, Point } from '../view/map-view'
import { svgElement } from '../view/svg-element'
import { around, type NameToPlace, placeNames, type Stretch } from './place-names'

/** Sizes of the two kinds of names, px: as the style sheet sets them, and how wide a letter is on average. */
const STATION_TEXT = { heightPx: 18, letterPx: 9.2 }
const HAZARD_TEXT = { heightPx: 15, letterPx: 6.4 }
/** From the middle of a station's symbol to the middle of its name, px. */
const ABOVE_PX = 22
const BELOW_PX = 21
const BESIDE_PX = 21
/** Room that a station's symbol takes, px. */
const SYMBOL_PX = { width: 32, height: 24 }
/** A hazard smaller than this on the screen stays without its name, px. */
const LEAST_HAZARD_PX = 36
/** A longer name is cut off here: the panel has it whole. */
const MOST_LETTERS = 28
/** Where along a hazard its name may stand, in order of preference. */
const PARTS = [0.5, 0.25, 0.75, 0.1, 0.9]

interface Label extends NameToPlace {
  readonly words: string
  readonly kind: 'station-name' | 'hazard-name'
}

/** Writes the names of stations and hazards where they cover least of the drawing. */
export function showNames({ store, view, ghost, names }: Bench): () => void {
  const group = view.addGroup('names')
  const drawn = new Map<string, { text: SVGTextElement; state: string }>()
  let places: ReadonlyMap<string, number> = new Map()
  const stop = effect(() => {
    view.frame.value
    const plan = store.plan.value
    const hiddenId = ghost.value?.station ?? null
    const all = [...stationLabels(plan, view, hiddenId), ...hazardLabels(plan, view)]
    // While a hand drags, names keep their sides: nothing hops about, and every move is quick.
    if (!store.dragging.value) {
      const scene = sceneOf(plan, view)
      const symbols = scene.stations.map(({ at }) => around(at, SYMBOL_PX.width, SYMBOL_PX.height))
      places = placeNames(all, symbols, stretchesOf(scene.lines))
    }
    // What is selected bears its name even where there is no room.
    const selectedId = store.selection.value?.id
    const labels = all.flatMap((label) => {
      const place = places.get(label.id) ?? (label.id === selectedId ? 0 : -1)
      const box = label.candidates[place]
      return box ? [{ ...label, box }] : []
    })
    names.value = labels.map(({ box }) => box)
    const seen = new Set(labels.map(({ id }) => id))
    for (const [id, { text }] of drawn) {
      if (seen.has(id)) continue
      text.remove()
      drawn.delete(id)
    }
    for (const { id, words, kind, box } of labels) {
      const state = `${box.left.toFixed(1)} ${box.bottom.toFixed(1)} ${words}`
      const before = drawn.get(id)
      if (before?.state === state) continue
      const text = before?.text ?? svgElement('text', { class: kind, 'text-anchor': 'middle' }, group)
      text.setAttribute('x', ((box.left + box.right) / 2).toFixed(1))
      text.setAttribute('y', (box.bottom - 4).toFixed(1))
      text.textContent = words
      drawn.set(id, { text, state })
    }
  })
  return () => {
    stop()
    group.remove()
  }
}

const shortened = (name: string): string =>
  name.length > MOST_LETTERS ? `${name.slice(0, MOST_LETTERS - 1).trimEnd()}…` : name

const stretchesOf = (lines: readonly { readonly path: readonly Point[] }[]): readonly Stretch[] =>
  lines.flatMap(({ path }) => path.slice(1).map((to, i) => ({ from: path[i]!, to })))

function stationLabels(plan: Plan, view: MapView, hiddenId: string | null): Label[] {
  return [...plan.stations.values()]
    .filter(({ id }) => id !== hiddenId)
    .map(({ id, name, position }) => {
      const { x, y } = view.pointOf(position)
      const words = shortened(name)
      const width = words.length * STATION_TEXT.letterPx
      const beside = BESIDE_PX + width / 2
      const middles = [
        { x, y: y - ABOVE_PX },
        { x, y: y + BELOW_PX },
        { x: x + beside, y },
        { x: x - beside, y },
        { x: x + beside - 12, y: y - ABOVE_PX },
        { x: x - beside + 12, y: y - ABOVE_PX },
        { x: x + beside - 12, y: y + BELOW_PX },
        { x: x - beside + 12, y: y + BELOW_PX },
      ]
      const candidates = middles.map((middle) => around(middle, width, STATION_TEXT.heightPx))
      return { id, words, kind: 'station-name' as const, candidates }
    })
}

function hazardLabels(plan: Plan, view: MapView): Label[] {
  return [...plan.hazards.values()].flatMap((hazard) => {
    const path = view.pathOf(outlineOf(hazard))
    const spanPx = Math.hypot(
      Math.max(...path.map(({ x }) => x)) - Math.min(...path.map(({ x }) => x)),
      Math.max(...path.map(({ y }) => y)) - Math.min(...path.map(({ y }) => y)),
    )
    if (!hazard.name || spanPx < LEAST_HAZARD_PX) return []
    const words = shortened(hazard.name)
    const width = words.length * HAZARD_TEXT.letterPx
    const middles =
      hazard.geometry.type === 'Polygon' ? [middleOfRing(path)] : PARTS.map((part) => along(path, part))
    const candidates = middles.flatMap(({ x, y }) => [
      around({ x, y: y - 13 }, width, HAZARD_TEXT.heightPx),
      around({ x, y: y + 15 }, width, HAZARD_TEXT.heightPx),
    ])
    return [{ id: hazard.id, words, kind: 'hazard-name' as const, candidates }]
  })
}

function middleOfRing(ring: readonly Point[]): Point {
  const corners = ring.slice(0, -1)
  const sum = corners.reduce((total, { x, y }) => ({ x: total.x + x, y: total.y + y }), { x: 0, y: 0 })
  return { x: sum.x / corners.length, y: sum.y / corners.length }
}

/** The point at a part 0…1 of a path's length. */
function along(path: readonly Point[], part: number): Point {
  const lengths = path.slice(1).map((to, i) => Math.hypot(to.x - path[i]!.x, to.y - path[i]!.y))
  let left = lengths.reduce((sum, length) => sum + length, 0) * part
  for (const [i, length] of lengths.entries()) {
    if (left <= length && length > 0) {
      const [from, to] = [path[i]!, path[i + 1]!]
      return { x: from.x + ((to.x - from.x) * left) / length, y: from.y + ((to.y - from.y) * left) / length }
    }
    left -= length
  }
  return path.at(-1)!
}
