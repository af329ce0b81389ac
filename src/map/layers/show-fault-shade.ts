import type { LikelyStretch } from '../../fault/likely-stretches'
import { wayOfWire } from '../../measure/place-on-line'
import type { LineId } from '../../plan/id'
import { effect } from '../../state/steady-effect'
import type { Bench } from '../bench'
import type { Point } from '../view/map-view'
import { svgElement } from '../view/svg-element'

/** Half the length of a bar at an end of the band, px. */
const BAR_PX = 20

/** Shades each line by how likely the fault is there, the broader the likelier, with a bar at either end of the band of 95 in a hundred. */
export function showFaultShade({ store, view }: Bench): () => void {
  const shade = view.addGroup('fault-shade', 'wire', 'lines')
  const bars = view.addGroup('fault-band', 'signs')
  const stop = effect(() => {
    view.frame.value
    const [plan, finding] = [store.settled.value, store.fault.value]
    const wayOf = ({ line, fromM, toM }: Pick<LikelyStretch, 'line' | 'fromM' | 'toM'>): readonly Point[] => {
      const [drawn, measured] = [plan.lines.get(line as LineId), finding?.measured.get(line as LineId)]
      return drawn && measured ? view.pathOf(wayOfWire(plan, measured, drawn, { fromM, toM })) : []
    }
    shade.replaceChildren(
      // The likeliest last, over the others.
      ...(finding?.found.shade ?? [])
        .toSorted((a, b) => b.tone - a.tone)
        .map((piece) =>
          svgElement('path', { class: `fault-tone tone-${piece.tone}`, d: pathOf(wayOf(piece)) }),
        ),
    )
    const band = finding?.found.band ? wayOf(finding.found.band) : []
    bars.replaceChildren(...(band.length > 1 ? [barAt(band), barAt(band.toReversed())] : []))
  })
  return () => {
    stop()
    shade.remove()
    bars.remove()
  }
}

const pathOf = (way: readonly Point[]): string =>
  way.length > 0 ? `M${way.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}` : ''

/** A stroke across the wire where a way begins. */
function barAt(way: readonly Point[]): SVGElement {
  const start = way[0]!
  const next = way.find(({ x, y }) => Math.hypot(x - start.x, y - start.y) > 0.5) ?? {
    x: start.x + 1,
    y: start.y,
  }
  const lengthPx = Math.hypot(next.x - start.x, next.y - start.y)
  const [dx, dy] = [((start.y - next.y) / lengthPx) * BAR_PX, ((next.x - start.x) / lengthPx) * BAR_PX]
  return svgElement('path', {
    class: 'fault-bar',
    d: pathOf([
      { x: start.x - dx, y: start.y - dy },
      { x: start.x + dx, y: start.y + dy },
    ]),
  })
}
