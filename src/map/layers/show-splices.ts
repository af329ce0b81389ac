import { effect } from '@preact/signals'
import { pointAtWireM } from '../../measure/along'
import type { LineId } from '../../plan/id'
import type { Line } from '../../plan/plan'
import { formatLengthM } from '../../report/quantity-text'
import type { ReportLine } from '../../report/report'
import type { Bench } from '../bench'
import { svgElement } from '../view/svg-element'

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
      const runsM = spliceWireM(measured)
      if (!line || runsM.length === 0 || !(selected || isRoomy(measured, view.metresPerPx()))) continue
      shown.add(line.id)
      const from = plan.stations.get(line.from)?.position
      const to = plan.stations.get(line.to)?.position
      const state = [line, from, to, measured.laidM, runsM.join(), frame, selected, units]
      const before = drawn.get(line.id)
      if (before?.state.every((part, i) => part === state[i])) continue
      const lineGroup = before?.group ?? svgElement('g', {}, group)
      lineGroup.replaceChildren(...splicesOf(bench, line, measured, runsM, selected))
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

function splicesOf(
  { view, store }: Bench,
  line: Line,
  measured: ReportLine,
  runsM: readonly number[],
  labelled: boolean,
): SVGElement[] {
  return runsM.map((wireM, i) => {
    const place = pointAtWireM(store.plan.peek(), measured, line, wireM)
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

/** Wire from the line's start to each splice, m; where several pairs are spliced at one place it counts once. */
export function spliceWireM({
  pieces,
}: {
  readonly pieces: readonly Pick<ReportLine['pieces'][number], 'pair' | 'wireM'>[]
}): readonly number[] {
  const ends = new Set<number>()
  const lastOf = new Map<number, number>()
  for (const { pair, wireM } of pieces) {
    const fromM = lastOf.get(pair)
    if (fromM !== undefined) ends.add(fromM)
    lastOf.set(pair, (fromM ?? 0) + wireM)
  }
  return [...ends].sort((a, b) => a - b)
}

const isRoomy = ({ mapM, pieces }: ReportLine, metresPerPx: number): boolean =>
  pieces.length > 1 && mapM / metresPerPx / pieces.length > LEAST_PIECE_PX
