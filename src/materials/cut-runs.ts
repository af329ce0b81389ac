import type { WireStretch } from '../measure/crossing-wire'
import { ROUNDING_M, total } from './spool-kinds'

/** One pair of one line, to be laid end to end. */
export interface Run {
  readonly needM: number
  /** Where no splice should fall. */
  readonly avoid: readonly WireStretch[]
}

/** A piece cut from one of a group's spools for one of its runs. */
export interface Cut {
  readonly run: number
  /** Index of the spool in the group. */
  readonly spool: number
  /** What it covers of the run, m. */
  readonly wireM: number
  /** What is cut off the spool: that, and half a splice at each spliced end, m. */
  readonly cutM: number
}

export interface CutGroup {
  /** Each run's pieces from its start to its end. */
  readonly cuts: readonly Cut[]
  readonly leftM: readonly number[]
  /** Splices that fall where none should. */
  readonly clashes: number
}

/**
 * Splices nearer to each other than 15 ft make a cluster, which is to be cut out; so no piece is shorter where it can be helped.
 *
 * Source: US Army subcourse SS0440, p. 3-4, par. 3d.
 */
export const CLUSTER_M = 4.572

/** Orders in which a group's runs and spools are tried to keep splices out of the stretches to avoid. */
const ORDERS = 60

const NONE: ReadonlySet<number> = new Set()

interface Order {
  readonly runs: readonly number[]
  readonly spools: readonly number[]
  /** Runs that are cut from their end to their start. */
  readonly flipped: ReadonlySet<number>
}

/** The farthest place on a run, at or before `farthestM`, where a splice may well fall; undefined where it lies before `nearestM`. */
function goodPlaceM(run: Run, isFlipped: boolean, farthestM: number, nearestM: number): number | undefined {
  const avoid = isFlipped
    ? run.avoid.map(({ fromM, toM }) => ({ fromM: run.needM - toM, toM: run.needM - fromM }))
    : run.avoid
  let placeM = Math.min(farthestM, run.needM - CLUSTER_M)
  for (;;) {
    if (placeM < nearestM) return undefined
    const stretch = avoid.find(({ fromM, toM }) => placeM > fromM + ROUNDING_M && placeM < toM - ROUNDING_M)
    if (!stretch) return placeM
    placeM = stretch.fromM
  }
}

/** Lays the runs end to end and cuts where a spool ends, or a little before it where wire to spare allows a better place. */
function cutInOrder(
  runs: readonly Run[],
  spoolsM: readonly number[],
  wasteM: number,
  order: Order,
): CutGroup | undefined {
  const halfM = wasteM / 2
  const leftM = [...spoolsM]
  const cuts: Cut[] = []
  let needM = 0
  for (const run of order.runs) needM += runs[run]!.needM
  let spareM = total(spoolsM) - needM - wasteM * (spoolsM.length - 1)
  let clashes = 0
  let turn = 0
  for (const index of order.runs) {
    const run = runs[index]!
    const isFlipped = order.flipped.has(index)
    const own: Cut[] = []
    let doneM = 0
    while (doneM < run.needM - ROUNDING_M) {
      const spool = order.spools[turn]
      if (spool === undefined) return undefined
      const startM = doneM > 0 ? halfM : 0
      const roomM = leftM[spool]!
      if (run.needM - doneM + startM <= roomM + ROUNDING_M) {
        const wireM = run.needM - doneM
        own.push({ run: index, spool, wireM, cutM: wireM + startM })
        leftM[spool] = Math.max(0, roomM - wireM - startM)
        doneM = run.needM
        continue
      }
      const farthestM = doneM + roomM - startM - halfM
      if (farthestM <= doneM + ROUNDING_M) {
        // What is left of this spool is eaten up by the splice: the run starts on the next one instead.
        if (doneM > 0) return undefined
        spareM -= roomM - wasteM
        turn++
        continue
      }
      const nearestM = Math.max(farthestM - spareM, doneM + CLUSTER_M)
      const goodM = goodPlaceM(run, isFlipped, farthestM, nearestM)
      if (goodM === undefined) clashes++
      const placeM = goodM ?? farthestM
      own.push({ run: index, spool, wireM: placeM - doneM, cutM: placeM - doneM + startM + halfM })
      leftM[spool] = farthestM - placeM
      spareM -= farthestM - placeM
      doneM = placeM
      turn++
    }
    cuts.push(...(isFlipped ? own.reverse() : own))
  }
  return { cuts, leftM, clashes }
}

/** As given first; then with spools turned round, runs turned round, and runs cut from their other end. */
function* orders(runs: readonly number[], spools: number): Generator<Order> {
  const given = Array.from({ length: spools }, (_, spool) => spool)
  const turned = (list: readonly number[], by: number) => [...list.slice(by), ...list.slice(0, by)]
  for (let by = 0; by < Math.max(runs.length, spools); by++) {
    for (const list of [turned(runs, by % runs.length), turned(runs, by % runs.length).reverse()]) {
      for (const row of [turned(given, by % spools), turned(given, by % spools).reverse()]) {
        yield { runs: list, spools: row, flipped: new Set() }
        yield { runs: list, spools: row, flipped: new Set(runs) }
        for (const run of runs.length > 1 ? runs : [])
          yield { runs: list, spools: row, flipped: new Set([run]) }
      }
    }
  }
}

/**
 * Cuts the runs of a group from its spools, with one splice fewer than there are spools, and as few of them as may be within the
 * stretches to avoid or less than 15 ft from the end of a run or from each other.
 *
 * Half of each splice's waste comes off either of the pieces that it joins. Wire to spare on the group moves a splice back out of
 * a bad place; where that is not enough, other orders of runs and spools are tried, a fixed number of them.
 *
 * @returns undefined where no order tried can be cut
 */
export function cutGroup(
  runs: readonly Run[],
  members: readonly number[],
  spoolsM: readonly number[],
  wasteM: number,
): CutGroup | undefined {
  const given = { runs: members, spools: [...spoolsM.keys()], flipped: NONE }
  let best = cutInOrder(runs, spoolsM, wasteM, given)
  if (best?.clashes === 0) return best
  let tried = 0
  for (const order of orders(members, spoolsM.length)) {
    const cut = cutInOrder(runs, spoolsM, wasteM, order)
    if (cut && (!best || cut.clashes < best.clashes)) best = cut
    if (best?.clashes === 0 || ++tried >= ORDERS) break
  }
  return best
}
