import type { Position } from '../../geo/position'
import type { NamedPath, NamedPoint, Places } from '../../plan/places'
import { bad, type Problem, type Result } from '../../problem'

/** More bytes than any list of places that a hand can use: beyond, reading would hold the page up. */
const MOST_BYTES = 32e6
/** Points of all kinds in one file, at most. */
export const MOST_POINTS = 250_000

/** A file that is too large to be read, told by its size alone; undefined for one that is not. */
export const tooLarge = (sizeBytes: number): Result<never> | undefined =>
  sizeBytes > MOST_BYTES
    ? refused(
        'too-large',
        '',
        `The file is larger than ${MOST_BYTES / 1e6} MB: cut out the part that you need.`,
      )
    : undefined

export const refused = (code: string, at: string, message: string): Result<never> =>
  bad({ code, at, message })

/** Collects what a file holds, and what is wrong with it. */
export class PlaceCollector {
  private readonly points: NamedPoint[] = []
  private readonly paths: NamedPath[] = []
  private readonly faults: Problem[] = []
  private count = 0

  /** The position of figures as a file has them, or undefined where they are none; `at` says where in the file. */
  position(lonDeg: number, latDeg: number, elevationM: number | undefined, at: string): Position | undefined {
    this.count++
    if (this.count > MOST_POINTS) return undefined
    if (!Number.isFinite(lonDeg) || !Number.isFinite(latDeg)) {
      this.fault(at, 'has no longitude and latitude that can be read: give both in degrees')
      return undefined
    }
    if (Math.abs(latDeg) > 90 || Math.abs(lonDeg) > 180) {
      this.fault(
        at,
        `lies off the globe, at latitude ${latDeg} and longitude ${lonDeg}: put its figures right`,
      )
      return undefined
    }
    const heightKnown = elevationM !== undefined && Number.isFinite(elevationM)
    return heightKnown ? [lonDeg, latDeg, elevationM] : [lonDeg, latDeg]
  }

  /** Whether there is room for more: a reader that hears no can stop. */
  get isFull(): boolean {
    return this.count > MOST_POINTS || this.faults.length >= 200
  }

  point(name: string, note: string, position: Position | undefined, layer = ''): void {
    if (position) this.points.push({ name: name.trim(), note: note.trim(), layer: layer.trim(), position })
  }

  /** A path of one place is none; a place said twice in a row counts once. */
  path(name: string, note: string, positions: readonly Position[], layer = ''): void {
    const apart = positions.filter(
      (each, i) => i === 0 || each[0] !== positions[i - 1]![0] || each[1] !== positions[i - 1]![1],
    )
    if (apart.length >= 2)
      this.paths.push({ name: name.trim(), note: note.trim(), layer: layer.trim(), positions: apart })
  }

  fault(at: string, what: string): void {
    if (this.faults.length < 200) this.faults.push({ code: 'bad-place', at, message: `${at} ${what}.` })
  }

  result(): Result<Places> {
    if (this.count > MOST_POINTS) {
      const most = MOST_POINTS.toLocaleString('en')
      return refused(
        'too-many-places',
        '',
        `The file has more than ${most} points: cut out the part that you need, or thin it.`,
      )
    }
    if (this.faults.length > 0) return bad(...this.faults)
    if (this.points.length === 0 && this.paths.length === 0)
      return refused('no-places', '', 'The file has no points and no lines that a plan could take.')
    return { ok: true, value: { points: this.points, paths: this.paths } }
  }
}
