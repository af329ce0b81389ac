import { pointAtWireM } from '../measure/along'
import type { Line, Plan, Position } from '../plan/plan'
import type { ReportLine } from './report'

/** A splice, where it falls on its line. */
export interface SpliceMark {
  /** `S1`, counted from the line's `from`. */
  readonly name: string
  /** Which pair, from 0. */
  readonly pair: number
  /** Wire from the end at `from`, m. */
  readonly wireM: number
  /** Running distance along the ground, m. */
  readonly groundM: number
  readonly legIndex: number
  readonly position: Position
}

/** Two lengths of wire closer than this are one place on the ground, m. */
const SAME_M = 0.01

/** The splices of one line, in the order in which a crew comes to them. */
export function spliceMarks(plan: Plan, line: Line, measured: ReportLine): readonly SpliceMark[] {
  const runs = new Map<number, number>()
  const found: { pair: number; wireM: number }[] = []
  for (const piece of measured.pieces) {
    const wireM = (runs.get(piece.pair) ?? 0) + piece.wireM
    runs.set(piece.pair, wireM)
    if (wireM < measured.wireM - SAME_M) found.push({ pair: piece.pair, wireM })
  }
  // A short stock ends before the line does: there is nothing there to splice to.
  const splices = found.filter(({ pair, wireM }) => wireM < runs.get(pair)! - SAME_M)
  return splices
    .toSorted((a, b) => a.wireM - b.wireM || a.pair - b.pair)
    .map(({ pair, wireM }, i) => {
      const { groundM, legIndex, position } = pointAtWireM(plan, measured, line, wireM)
      return { name: `S${i + 1}`, pair, wireM, groundM, legIndex, position }
    })
}
