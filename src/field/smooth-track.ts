import { bendsKept } from '../geo/bends-kept'
import { type PlanePoint, planeAbout } from '../geo/plane'
import type { TrackPoint } from '../plan/field-schema'

/** A receiver that does not say how well it knows its place, m. */
const USUAL_ACCURACY_M = 5
/** Errors of a receiver hang together from second to second: one place tells no more than one so much worse would tell alone. Allowance. */
const HANGS_TOGETHER = 2
/** Places known worse than this are left out, m. */
const WORST_ACCURACY_M = 60
/** How a walker changes pace and direction, m/s². */
const CHANGE_M_PER_S2 = 0.05
/** A walker goes so fast where no times are given, m/s. */
const WALK_M_PER_S = 1.2
/** So many standard deviations from where the walker must be, a place is a leap of the receiver, and left out; not so many in a row. */
const LEAP_SIGMAS = 3
const MOST_LEAPS = 10
/** Slower than this a walker stands, m/s, and within so much of one place, m. Allowance. */
const STANDS_M_PER_S = 0.4
const STANDS_WITHIN_M = 12
/** How far a bend may lie off the way for want of being kept, m. */
const OFF_M = 3

interface Fix {
  readonly at: PlanePoint
  readonly seconds: number
  readonly sigmaM: number
}

/** One coordinate of a walker at one moment: place and speed with their covariance. */
interface State {
  readonly x: number
  readonly v: number
  readonly pxx: number
  readonly pxv: number
  readonly pvv: number
}

/**
 * The way that was walked, from what a receiver told along it: longitudes and latitudes of its bends, ends included. Its length is within
 * about one part in a hundred of the way, where the raw track, with each step of the receiver's error in it, is far too long.
 *
 * A walker of constant velocity with small random changes, looked at forwards and then backwards; leaps of the receiver are left out, what
 * comes of standing still is one place; then bends that lie within 3 m are dropped.
 *
 * Source: H. E. Rauch, F. Tung and C. T. Striebel, AIAA Journal 3 (1965), 1445 (from memory).
 */
export function smoothTrack(
  points: readonly TrackPoint[],
): readonly (readonly [lonDeg: number, latDeg: number])[] {
  const sound = points.filter(([, , , , accuracyM]) => (accuracyM ?? 0) <= WORST_ACCURACY_M)
  if (sound.length < 3) return sound.map(([lonDeg, latDeg]) => [lonDeg, latDeg])
  const plane = planeAbout(sound.map(([lonDeg, latDeg]) => [lonDeg, latDeg]))
  const fixes = withoutLeaps(fixesOf(sound, (point) => plane.toPlane([point[0], point[1]])))
  const [east, north] = [smoothed(fixes, 0), smoothed(fixes, 1)]
  const path = east.map(({ x }, k): PlanePoint => [x, north[k]!.x])
  const speeds = east.map(({ v }, k) => Math.hypot(v, north[k]!.v))
  const way = withoutStanding(path, speeds)
  return bendsKept(way, OFF_M).map((k) => plane.toPosition(way[k]!))
}

/** What a receiver told, without its leaps; where it goes on from there, it was none. */
function withoutLeaps(fixes: readonly Fix[]): readonly Fix[] {
  const kept: Fix[] = []
  let leapt: Fix[] = []
  let states = [begun(fixes[0]!, 0), begun(fixes[0]!, 1)]
  for (const fix of fixes) {
    const dt = fix.seconds - (kept.at(-1)?.seconds ?? fix.seconds)
    const ahead = states.map((state) => moved(state, dt))
    const off = Math.hypot(
      ...ahead.map(({ x, pxx }, axis) => (fix.at[axis]! - x) / Math.sqrt(pxx + fix.sigmaM ** 2)),
    )
    if (off > LEAP_SIGMAS && leapt.length < MOST_LEAPS) {
      leapt.push(fix)
      continue
    }
    if (off > LEAP_SIGMAS) {
      kept.push(...leapt)
      states = [begun(fix, 0), begun(fix, 1)]
    } else states = ahead.map((state, axis) => corrected(state, fix, axis as 0 | 1))
    leapt = []
    kept.push(fix)
  }
  return kept
}

/** The way with one place wherever the walker stood. */
function withoutStanding(path: readonly PlanePoint[], speeds: readonly number[]): readonly PlanePoint[] {
  const out: PlanePoint[] = []
  let [count, sumX, sumY] = [0, 0, 0]
  const leave = () => {
    if (count > 0) out.push([sumX / count, sumY / count])
    ;[count, sumX, sumY] = [0, 0, 0]
  }
  for (const [k, [x, y]] of path.entries()) {
    const stands = speeds[k]! < STANDS_M_PER_S
    if (!stands || Math.hypot(x - sumX / count, y - sumY / count) > STANDS_WITHIN_M) leave()
    if (stands) [count, sumX, sumY] = [count + 1, sumX + x, sumY + y]
    else out.push([x, y])
  }
  leave()
  return out
}

function fixesOf(points: readonly TrackPoint[], toPlane: (point: TrackPoint) => PlanePoint): readonly Fix[] {
  const fixes: Fix[] = []
  for (const point of points) {
    const at = toPlane(point)
    const before = fixes.at(-1)
    const sigmaM = HANGS_TOGETHER * Math.max(1, point[4] ?? USUAL_ACCURACY_M)
    const told = point[3] ? Date.parse(point[3]) / 1000 : Number.NaN
    const walked = before ? Math.hypot(at[0] - before.at[0], at[1] - before.at[1]) / WALK_M_PER_S : 0
    const seconds = Number.isNaN(told) ? (before?.seconds ?? 0) + Math.max(1, walked) : told
    // Two places of one moment are one.
    if (before && seconds <= before.seconds) continue
    fixes.push({ at, seconds, sigmaM })
  }
  return fixes
}

const begun = ({ at }: Fix, axis: 0 | 1): State => ({ x: at[axis], v: 0, pxx: 100, pxv: 0, pvv: 4 })

/** What is known of a walker once another place was told. */
function corrected(ahead: State, { at, sigmaM }: Fix, axis: 0 | 1): State {
  const gain = 1 / (ahead.pxx + sigmaM ** 2)
  const [kx, kv] = [ahead.pxx * gain, ahead.pxv * gain]
  const off = at[axis] - ahead.x
  return {
    x: ahead.x + kx * off,
    v: ahead.v + kv * off,
    pxx: (1 - kx) * ahead.pxx,
    pxv: (1 - kx) * ahead.pxv,
    pvv: ahead.pvv - kv * ahead.pxv,
  }
}

/** One coordinate with its speed, smoothed over all moments. */
function smoothed(fixes: readonly Fix[], axis: 0 | 1): readonly Pick<State, 'x' | 'v'>[] {
  const told: State[] = []
  const expected: State[] = []
  const steps: number[] = []
  let state = begun(fixes[0]!, axis)
  for (const [k, fix] of fixes.entries()) {
    const dt = k === 0 ? 0 : fix.seconds - fixes[k - 1]!.seconds
    const ahead = k === 0 ? state : moved(state, dt)
    state = corrected(ahead, fix, axis)
    told.push(state)
    expected.push(ahead)
    steps.push(dt)
  }
  const path = told.map(({ x, v }) => ({ x, v }))
  let [x, v] = [state.x, state.v]
  for (let k = told.length - 2; k >= 0; k--) {
    const [own, next, dt] = [told[k]!, expected[k + 1]!, steps[k + 1]!]
    const det = next.pxx * next.pvv - next.pxv ** 2
    // C = P Fᵀ P'⁻¹
    const [a, b] = [own.pxx + dt * own.pxv, own.pxv]
    const [c, d] = [own.pxv + dt * own.pvv, own.pvv]
    const [cxx, cxv] = [(a * next.pvv - b * next.pxv) / det, (b * next.pxx - a * next.pxv) / det]
    const [cvx, cvv] = [(c * next.pvv - d * next.pxv) / det, (d * next.pxx - c * next.pxv) / det]
    const [dx, dv] = [x - next.x, v - next.v]
    x = own.x + cxx * dx + cxv * dv
    v = own.v + cvx * dx + cvv * dv
    path[k] = { x, v }
  }
  return path
}

function moved({ x, v, pxx, pxv, pvv }: State, dt: number): State {
  const q = CHANGE_M_PER_S2 ** 2
  return {
    x: x + dt * v,
    v,
    pxx: pxx + 2 * dt * pxv + dt * dt * pvv + (q * dt ** 4) / 4,
    pxv: pxv + dt * pvv + (q * dt ** 3) / 2,
    pvv: pvv + q * dt * dt,
  }
}
