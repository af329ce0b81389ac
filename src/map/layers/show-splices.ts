import { effect } from '@preact/signals'
import type { LineId } from '../../plan/id'
import { formatLengthM } from '../../report/quantity-text'
import type { ReportLine } from '../../report/report'
import type { Bench } from '../bench'
import { svgElement } from '../view/svg-element'

type SplicePlace = ReportLine['splices'][number][0]

/** Pieces shorter than this on the screen would make the lozenges run together, px. */
const LEAST_PIECE_PX = 40

/** The splices of one line, and what they were drawn from. */
interface DrawnSplices {
  readonly group: SVGGElement
  readonly state: readonly unknown[]
}

/** Draws a lozenge wherever one spool ends and the next begins; on the selected line each says its number and its place. */
export function showSplices(bench: Bench): () => void {
  const { store, view } = bench
  const group = view.addGroup('splices')
  const drawn = new Map<LineId, DrawnSplices>()

  const stop = effect(() => {
    const frame = view.frame.value
    const plan = store.plan.value
    const selection = store.selection.value
    const units = store.units.value
    const shown = new Set<LineId>()
    for (const measured of store.report.value.lines) {
      const line = plan.lines.get(measured.id)
      const selected = selection?.kind === 'line' && selection.id === measured.id
      if (!line || !(selected || isRoomy(measured, view.metresPerPx()))) continue
      const places = measured.splices.map(([splice]) => splice)
      if (places.length === 0) continue
      shown.add(line.id)
      const from = plan.stations.get(line.from)?.position
      const to = plan.stations.get(line.to)?.position
      const state = [
        line,
        from,
        to,
        measured.laidM,
        places.map(({ wireM }) => wireM).join(),
        frame,
        selected,
        units,
      ]
      const before = drawn.get(line.id)
      if (before?.state.every((part, i) => part === state[i])) continue
      const lineGroup = before?.group ?? svgElement('g', {}, group)
      lineGroup.replaceChildren(...lozenges(bench, places, selected))
      drawn.set(line.id, { group: lineGroup, state })
    }
    for (const [id, { group: old }] of drawn) {
      if (shown.has(id)) continue
      old.remove()
      drawn.delete(id)
    }
  })

  return () => {
    stop()
    group.remove()
  }
}

function lozenges({ view, store }: Bench, places: readonly SplicePlace[], labelled: boolean): SVGElement[] {
  return places.map((place, i) => {
    const { x, y } = view.pointOf(place.position)
    const splice = svgElement('g', {
      class: 'splice',
      transform: `translate(${x.toFixed(1)} ${y.toFixed(1)})`,
    })
    svgElement('path', { d: 'M0 -9L9 0L0 9L-9 0Z' }, splice)
    if (labelled) {
      const label = svgElement('text', { x: 13, y: 17 }, splice)
      label.textContent = `S${i + 1} · ${formatLengthM(place.groundM, store.units.peek())}`
    }
    return splice
  })
}

const isRoomy = ({ mapM, pieces }: ReportLine, metresPerPx: number): boolean =>
  pieces.length > 1 && mapM / metresPerPx / pieces.length > LEAST_PIECE_PX
