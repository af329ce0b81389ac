import type { MeasuredLine } from '../measure/measured'
import { nearestOnLine } from '../measure/nearest-on-line'
import type { TrackPoint } from '../plan/field-schema'
import type { Line, Plan } from '../plan/plan'
import { bad, ok, type Result } from '../problem'

/** A track of which no end comes nearer than this to a line is another's, m. Allowance. */
const FARTHEST_M = 500

/** Of several tracks the one that keeps nearest to a line; refused where none comes near it. */
export function trackOfLine(
  plan: Plan,
  line: Line,
  measured: MeasuredLine,
  tracks: readonly (readonly TrackPoint[])[],
): Result<readonly TrackPoint[]> {
  const offM = ([lonDeg, latDeg]: TrackPoint) => nearestOnLine(plan, measured, line, [lonDeg, latDeg]).offM
  const farM = (track: readonly TrackPoint[]) => {
    const step = Math.max(1, Math.floor(track.length / 50))
    const seen = track.filter((_, k) => k % step === 0)
    return seen.reduce((sum, point) => sum + offM(point), 0) / seen.length
  }
  const [nearest] = tracks.map((track) => ({ track, farM: farM(track) })).sort((a, b) => a.farM - b.farM)
  if (nearest && Math.min(offM(nearest.track[0]!), offM(nearest.track.at(-1)!)) <= FARTHEST_M)
    return ok(nearest.track)
  const message = `No track of this file comes near the line: the nearest keeps ${((nearest?.farM ?? 0) / 1000).toFixed(1)} km away. Choose the file of this line's walk.`
  return bad({ code: 'far-track', at: line.id, message })
}
