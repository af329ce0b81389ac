import { bendsKept } from '../../geo/bends-kept'
import { planeAbout } from '../../geo/plane'
import type { Lay, Leg, Line, Plan } from '../../plan/plan'
import { verticesOf } from '../../plan/plan'

/** A line without the bends that lie within so many metres of its way; a leg has the lay that most of what it stands for has. */
export function thinnedLine(plan: Plan, line: Line, withinM: number): Line {
  const vertices = verticesOf(plan, line)
  const plane = planeAbout(vertices)
  const path = vertices.map(plane.toPlane)
  const kept = bendsKept(path, withinM)
  const lengthM = (k: number) => Math.hypot(path[k + 1]![0] - path[k]![0], path[k + 1]![1] - path[k]![1])
  return {
    ...line,
    bends: kept.slice(1, -1).map((k) => vertices[k]!),
    legs: kept.slice(1).map((to, i): Leg => {
      const byLay = new Map<Lay, number>()
      for (let k = kept[i]!; k < to; k++) {
        const { lay } = line.legs[k]!
        byLay.set(lay, (byLay.get(lay) ?? 0) + lengthM(k))
      }
      const [[lay]] = [...byLay].toSorted((a, b) => b[1] - a[1]) as [[Lay, number]]
      return { lay }
    }),
  }
}
