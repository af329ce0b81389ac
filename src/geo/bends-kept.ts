import type { PlanePoint } from './plane'

/**
 * Which places of a way are left, from its start to its end, where those are dropped that lie within so many metres of what is left.
 *
 * Source: D. H. Douglas and T. K. Peucker, The Canadian Cartographer 10 (1973), 112 (from memory).
 */
export function bendsKept(path: readonly PlanePoint[], withinM: number): readonly number[] {
  const kept = new Set([0, path.length - 1])
  const open: [number, number][] = [[0, path.length - 1]]
  for (let next = open.pop(); next; next = open.pop()) {
    const [first, last] = next
    let [farthest, mostM] = [-1, withinM]
    for (let k = first + 1; k < last; k++) {
      const offM = offLineM(path[k]!, path[first]!, path[last]!)
      if (offM > mostM) [farthest, mostM] = [k, offM]
    }
    if (farthest === -1) continue
    kept.add(farthest)
    open.push([first, farthest], [farthest, last])
  }
  return [...kept].sort((a, b) => a - b)
}

/** How far a point lies off a stretch, m: off its nearer end where it lies beyond. */
export function offLineM([x, y]: PlanePoint, [ax, ay]: PlanePoint, [bx, by]: PlanePoint): number {
  const [dx, dy] = [bx - ax, by - ay]
  const square = dx * dx + dy * dy
  const t = square > 0 ? Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / square)) : 0
  return Math.hypot(x - ax - t * dx, y - ay - t * dy)
}
