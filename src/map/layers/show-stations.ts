import { computed } from '@preact/signals'
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
  readonly isSupplied: boolean
  readonly isFailing: boolean
  readonly isSelected: boolean
}

interface DrawnSymbol {
  readonly group: SVGGElement
  at: string
  look: string
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
  const supplied = computed(() =>
    suppliedStations(store.plan.value.circuits, [], () => supplies(store.plan.value)),
  )
  const marksOf = (stations: readonly StationId[], selected?: string): Marks => ({
    isSupplied: stations.some((id) => supplied.value.has(id)),
    isFailing: stations.some((id) => failing.value.has(id)),
    isSelected: stations[0] === selected,
  })

  const stopStanding = effect(() => {
    standing.draw(gathered.value.map((each) => ({ ...each, marks: marksOf(each.stations) })))
  })
  const stopInHand = effect(() => {
    view.frame.value
    const { stations } = store.plan.value
    const selection = store.selection.value
    const hidden = ghost.value?.station ?? null
    const held = [...moving.value.stations].flatMap((id) => (id === hidden ? [] : (stations.get(id) ?? [])))
    inHand.draw(
      held.map(({ id, position }) => ({
        at: view.pointOf(position),
        stations: [id],
        marks: marksOf([id], selection?.kind === 'station' ? selection.id : undefined),
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

const suppliedStations = memoryOfEach<Plan['circuits'], ReadonlySet<StationId>>()
const supplies = (plan: Plan): ReadonlySet<StationId> =>
  new Set([...plan.circuits.values()].flatMap(({ supply }) => (supply ? [supply.at] : [])))

/** A group of symbols, each drawn anew only where it stands or looks otherwise. */
function symbols(group: SVGGElement) {
  const drawn = new Map<StationId, DrawnSymbol>()
  const draw = (all: readonly (Gathered & { readonly marks: Marks })[]) => {
    const seen = new Set<StationId>()
    const added = document.createDocumentFragment()
    for (const { at, stations, marks } of all) {
      const id = stations[0]
      seen.add(id)
      const symbol = drawn.get(id) ?? { group: svgElement('g', {}), at: '', look: '' }
      if (!drawn.has(id)) added.append(symbol.group)
      drawn.set(id, symbol)
      const look = [
        stations.length > 1 ? 'station-count' : 'station',
        marks.isSupplied ? ' supplied' : '',
        marks.isFailing ? ' failing' : '',
        marks.isSelected ? ' selected' : '',
      ].join('')
      const place = placeOf(at)
      if (symbol.at !== place) symbol.group.setAttribute('transform', place)
      symbol.at = place
      if (symbol.look === `${look} ${stations.length}`) continue
      symbol.look = `${look} ${stations.length}`
      symbol.group.setAttribute('class', look)
      symbol.group.replaceChildren(
        ...(stations.length > 1 ? countOf(stations.length, marks) : blockOf(marks)),
      )
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

const placeOf = ({ x, y }: Point): string => `translate(${x.toFixed(1)} ${y.toFixed(1)})`

/** The terminal block with two posts, or the cross of the supply; the mark of a failure and the ring of the selection. */
const blockOf = ({ isSupplied, isFailing, isSelected }: Marks): SVGElement[] => [
  ...(isSelected
    ? [svgElement('rect', { class: 'ring', x: -18, y: -14, width: 36, height: 28, rx: 8 })]
    : []),
  svgElement('rect', { class: 'block', x: -13, y: -9, width: 26, height: 18, rx: 4 }),
  isSupplied
    ? svgElement('path', { class: 'cross', d: 'M-6 0H6M0 -5V5' })
    : svgElement('path', { class: 'posts', d: 'M-5 0h0M5 0h0' }),
  ...(isFailing ? [failMark()] : []),
]

/** How many stations stand here, too near each other to be told apart; marked where one of them fails. */
function countOf(count: number, { isFailing }: Marks): SVGElement[] {
  const words = svgElement('text', { y: 4.5, 'text-anchor': 'middle' })
  words.textContent = String(count)
  return [
    svgElement('rect', { class: 'count-plate', x: -17, y: -12, width: 34, height: 24, rx: 12 }),
    words,
    ...(isFailing ? [failMark()] : []),
  ]
}

const failMark = (): SVGElement =>
  svgElement('path', { class: 'fail-mark', d: 'M9 -15h10v10h-10zM11.5 -12.5l5 5m0 -5l-5 5' })
