import type { Line } from '../../plan/plan'
import type { ReportLine } from '../../report/report'

/**
 * What a meter at the line's `from` reads across one pair that is shorted `wireM` along it, Ω; undefined for an earth return, where the
 * reading hangs on the earth of the moment until the line's own electrode is reached.
 *
 * R = loop resistance of the line · wire so far / wire of the line; the wire of a line is uniform.
 */
export function loopOhmsAt(line: Line, measured: ReportLine, wireM: number): number | undefined {
  if (wireM >= measured.wireM) return measured.loopOhms
  if (line.return === 'earth') return undefined
  return (measured.loopOhms * wireM) / measured.wireM
}
