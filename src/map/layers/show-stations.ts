import { computed } from '@preact/signals'
import { PLATE, SIGN_STROKES, type StationSign, stationSigns } from '../../figure/station-signs'
import { memoryOfEach } from '../../memo'
import type { StationId } from '../../plan/id'
import type { Plan } from '../../plan/plan'
import { failingStations } from '../../report/failing-stations'
import { effect } from '../../state/steady-effect'
import type { Bench } from '../bench'
import type { Gathered } from '../view/gather-stations'
import type { Point } from '../view/map-view'
import { svgElement } from '../view/svg-element'

/** What a symbol says of its station, or of some station among those gathered under it. */
interface Marks {
  readonly sign: StationSign
  readonly isFailing: boolean
  readonly isSelected: boolean
  /** Wire is only joined here: nobody listens. */
  readonly isJoint: boolean
}

interface DrawnSymbol {
  readonly group: SVGGElement
  readonly look: string
}

/** Keeps a terminal block on the map for every station, and a count where several would lie on each other. */
export function showStations({ store, view, ghost, moving, gathered }: Bench): () => void {
  const standing = symbols(view.addGroup('stations', 'signs'))
  const inHand = symbols(view.addGroup('stations', 'signs-moving'))
  let failed: ReadonlySet<StationId> = new Set()
  const failing = computed(() => {
    const now = failingStations(store.plan.value, store.report.value)
    if (now.size !== failed.size || [...now].some((id) => !failed.has(id))) failed = now
    return failed
  })
  const signs = computed(() => {
    const { circuits } = store.plan.value
    const { supplies } = store.catalog.value
    return signsOf(circuits, [supplies], () => stationSigns(circuits, (type) => supplies.get(type)?.kind))
  })
  const joints = computed(() => {
    const { circuits, lines } = store.plan.value
    return jointsOf(circuits, [lines], () => jointsIn(store.plan.value))
  })
  const marksOf = (stations: readonly StationId[], isSelected = false): Marks => ({
    sign: signs.value.get(stations.find((id) => signs.value.has(id))!) ?? 'telephone',
    isFailing: stations.some((id) => failing.value.has(id)),
    isSelected,
    isJoint: stations.every((id) => joints.value.has(id)),
  })

  const stopStanding = effect(() => {
    standing.draw(gathered.value.map((each) => ({ ...each, marks: marksOf(each.stations) })))
  })
  const stopInHand = effect(() => {
    view.frame.value
    const { stations } = store.plan.value
    const selection = store.selection.value
    const selected = new Set(
      selection?.kind === 'several'
        ? selection.stations
        : selection?.kind === 'station'
          ? [selection.id]
          : [],
    )
    const hidden = ghost.value?.station ?? null
    const held = [...moving.value.stations].flatMap((id) => (id === hidden ? [] : (stations.get(id) ?? [])))
    inHand.draw(
      held.map(({ id, position }) => ({
        at: view.pointOf(position),
        stations: [id],
        marks: marksOf([id], selected.has(id)),
      })),
    )
  })
  return () => {
    stopStanding()
    stopInHand()
    standing.remove()
    inHand.remove()
  }
}

const jointsOf = memoryOfEach<Plan['circuits'], ReadonlySet<StationId>>()
/** Stations on a line at which no circuit has a telephone or its supply. */
function jointsIn({ circuits, lines }: Plan): ReadonlySet<StationId> {
  const joints = new Set([...lines.values()].flatMap(({ from, to }) => [from, to]))
  for (const { sets, supply } of circuits.values()) {
    for (const station of sets.keys()) joints.delete(station)
    if (supply) joints.delete(supply.at)
  }
  return joints
}

const signsOf = memoryOfEach<Plan['circuits'], ReturnType<typeof stationSigns>>()

/**
 * A group of symbols, each drawn anew only where it stands or looks otherwise. Each is drawn where it stands: moved there by a transform
 * it would be a piece of its own for the painter, and a thousand of those are felt.
 */
function symbols(group: SVGGElement) {
  const drawn = new Map<StationId, DrawnSymbol>()
  const draw = (all: readonly (Gathered & { readonly marks: Marks })[]) => {
    const seen = new Set<StationId>()
    const added = document.createDocumentFragment()
    for (const { at, stations, marks } of all) {
      const id = stations[0]
      seen.add(id)
      const count = stations.length
      const look = `${at.x.toFixed(1)} ${at.y.toFixed(1)} ${count} ${marks.sign} ${marks.isFailing} ${marks.isSelected} ${marks.isJoint}`
      const before = drawn.get(id)
      if (before?.look === look) continue
      const symbol = before?.group ?? svgElement('g', {})
      symbol.setAttribute(
        'class',
        `${count > 1 ? 'station-count' : 'station'}${marks.isFailing ? ' failing' : ''}`,
      )
      symbol.replaceChildren(
        ...(count > 1 ? countOf(at, count, marks) : marks.isJoint ? jointOf(at, marks) : blockOf(at, marks)),
      )
      if (!before) added.append(symbol)
      drawn.set(id, { group: symbol, look })
    }
    for (const [id, { group: old }] of drawn) {
      if (seen.has(id)) continue
      old.remove()
      drawn.delete(id)
    }
    if (added.firstChild) group.append(added)
  }
  return { draw, remove: () => group.remove() }
}

const plate = (name: string, { x, y }: Point, width: number, height: number, rx: number): SVGElement =>
  svgElement('rect', {
    class: name,
    x: (x - width / 2).toFixed(1),
    y: (y - height / 2).toFixed(1),
    width,
    height,
    rx,
  })

/** A path whose steps are relative, begun at a place beside a symbol's middle. */
const strokes = (
  name: string,
  { x, y }: Point,
  ...from: readonly (readonly [number, number, string])[]
): SVGElement =>
  svgElement('path', {
    class: name,
    d: from.map(([dx, dy, steps]) => `M${(x + dx).toFixed(1)} ${(y + dy).toFixed(1)}${steps}`).join(''),
  })

/** The terminal block with its sign; the mark of a failure and the ring of the selection. */
const blockOf = (at: Point, { sign, isFailing, isSelected }: Marks): SVGElement[] => [
  ...(isSelected ? [plate('ring', at, 36, 28, 8)] : []),
  plate('block', at, PLATE.width, PLATE.height, PLATE.rounding),
  strokes(SIGN_STROKES[sign].look === 'dots' ? 'posts' : 'cross', at, ...SIGN_STROKES[sign].from),
  ...(isFailing ? [failMark(at)] : []),
]

/** A joint: a splice in its sleeve, smaller than anything that somebody answers. */
const jointOf = (at: Point, { isSelected }: Marks): SVGElement[] => [
  ...(isSelected ? [plate('ring', at, 30, 24, 8)] : []),
  plate('joint', at, 12, 12, 6),
  plate('joint-core', at, 4, 4, 2),
]

/** How many stations stand here, too near each other to be told apart; marked where one of them fails. */
function countOf(at: Point, count: number, { isFailing }: Marks): SVGElement[] {
  const words = svgElement('text', {
    x: at.x.toFixed(1),
    y: (at.y + 4.5).toFixed(1),
    'text-anchor': 'middle',
  })
  words.textContent = String(count)
  return [plate('count-plate', at, 34, 24, 12), words, ...(isFailing ? [failMark(at)] : [])]
}

const failMark = (at: Point): SVGElement =>
  strokes('fail-mark', at, [9, -15, 'h10v10h-10z'], [11.5, -12.5, 'l5 5m0 -5l-5 5'])
