import { flagSplices } from '../materials/splice-limits'
import type { Piece } from '../materials/spool-plan'
import type { MeasuredLine } from '../measure/measured'
import { pointAtWireM } from '../measure/place-on-line'
import { joined, memoryOfRow } from '../memo'
import type { LineId } from '../plan/id'
import { inRow, lineRowOf } from '../plan/line-row'
import type { Line, Plan } from '../plan/plan'
import type { Caution } from './caution'

const SOURCES = {
  'class-b-wire': 'US Army subcourse SS0440, p. 3-4, par. 4 and 5',
  'splice-cluster': 'US Army subcourse SS0440, p. 3-4, par. 3d',
  'splice-under-water': 'common practice',
  'splice-on-span': 'common practice',
} as const

/** Whether a caution is about splices. */
export const isAboutSplices = ({ code }: Caution): boolean => code in SOURCES

/** Splices that a handbook or common practice would not have, with their places; in the order of the lines. */
export function spliceCautions(
  plan: Plan,
  measured: ReadonlyMap<LineId, MeasuredLine>,
  pieces: ReadonlyMap<LineId, readonly Piece[]>,
): readonly Caution[] {
  const { lines } = lineRowOf(plan)
  const lengths = inRow(lines, measured)
  const cut = inRow(lines, pieces)
  return joined(
    remembered(lines, [], [lengths, cut], (line, place) =>
      flagsOf(plan, line, lengths[place]!, cut[place] ?? NONE),
    ),
  )
}

const NONE: readonly Piece[] = []
const remembered = memoryOfRow<Line, readonly Caution[]>()

function flagsOf(
  plan: Plan,
  line: Line,
  measured: MeasuredLine,
  pieces: readonly Piece[],
): readonly Caution[] {
  if (pieces.length <= line.pairs) return []
  return flagSplices(measured, pieces).map(({ note, pair, wireM }): Caution => {
    const caution = {
      ...note,
      where: line.id,
      ...(line.pairs > 1 && { pair }),
      source: SOURCES[note.code],
    }
    if (wireM === undefined) return caution
    const { position, legIndex, groundM } = pointAtWireM(plan, measured, line, wireM)
    // A caution's place counts along the map, the wire along the ground.
    const distanceM = measured.groundM > 0 ? (groundM * measured.mapM) / measured.groundM : 0
    return { ...caution, place: { position, legIndex, distanceM } }
  })
}
