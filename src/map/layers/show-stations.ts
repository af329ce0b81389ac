import { computed } from '@preact/signals'
import { stationSigns } from '../../figure/station-signs'
import { memoryOfEach } from '../../memo'
import type { StationId } from '../../plan/id'
import type { Plan } from '../../plan/plan'
import { failingStations } from '../../report/failing-stations'
import { effect } from '../../state/steady-effect'
import type { Bench } from '../bench'
import type { Gathered } from '../view/gather-stations'
import { showWithin, svgElement } from '../view/svg-element'
import { countSign, type Marks, stationSign } from './station-signs'

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
    const { stations } = store.atHand.value
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
      showWithin(symbol, count > 1 ? countSign(at, count, marks) : stationSign(at, marks))
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
