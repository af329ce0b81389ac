import { SPLICE_SIGN } from '../../figure/line-signs'
import { signAt } from '../../figure/sign-at'
import type { ReportLine } from '../../report/report'
import { formatLengthM, type UnitSystem } from '../../words/units'
import type { Bench } from '../bench'
import { isIn } from '../view/line-path'
import type { Point } from '../view/map-view'
import { svgElement } from '../view/svg-element'
import { showLineMarks } from './line-marks'

type SplicePlace = ReportLine['splices'][number][0]

/** Pieces shorter than this on the screen would make the lozenges run together, px. */
const LEAST_PIECE_PX = 40

/** Draws a lozenge wherever one spool ends and the next begins; on the selected line each says its number and its place. */
export function showSplices(bench: Bench): () => void {
  const { store, view } = bench
  return showLineMarks(bench, 'splices', (line, isSelected) => {
    const units = store.units.value
    if (line.splices.length === 0 || !(isSelected || isRoomy(line, view.metresPerPx()))) return null
    const places = line.splices.map(([splice]) => splice)
    return {
      from: [
        units,
        ...places.flatMap(({ groundM, position: [lonDeg, latDeg] }) => [groundM, lonDeg, latDeg]),
      ],
      draw: () =>
        places.flatMap((place, i) =>
          isIn(view.drawBox(), view.pointOf(place.position))
            ? [lozenge(bench, place, isSelected ? spliceWords(place, i, units) : '')]
            : [],
        ),
    }
  })
}

const spliceWords = ({ groundM }: SplicePlace, i: number, units: UnitSystem) =>
  `S${i + 1} · ${formatLengthM(groundM, units)}`

function lozenge({ view }: Bench, { position }: SplicePlace, words: string): SVGElement {
  const at = view.pointOf(position)
  const splice = splicePlate(at)
  if (words)
    svgElement('text', { x: (at.x + 11).toFixed(1), y: (at.y - 6).toFixed(1) }, splice).textContent = words
  return splice
}

export function splicePlate(at: Point): SVGElement {
  const splice = svgElement('g', { class: 'splice' })
  svgElement('path', { d: signAt(SPLICE_SIGN, at) }, splice)
  return splice
}

const isRoomy = ({ mapM, pieces }: ReportLine, metresPerPx: number): boolean =>
  pieces.length > 1 && mapM / metresPerPx / pieces.length > LEAST_PIECE_PX
