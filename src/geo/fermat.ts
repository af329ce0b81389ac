import type { PlanePoint } from './plane'

const apart = ([ax, ay]: PlanePoint, [bx, by]: PlanePoint): number => Math.hypot(ax - bx, ay - by)

/** Cosine of the angle at the first of three points. */
function cosineAt([ax, ay]: PlanePoint, [bx, by]: PlanePoint, [cx, cy]: PlanePoint): number {
  const [ux, uy, vx, vy] = [bx - ax, by - ay, cx - ax, cy - ay]
  return (ux * vx + uy * vy) / (Math.hypot(ux, uy) * Math.hypot(vx, vy))
}

/**
 * The point from which three others are the nearest, all three together; undefined where that is one of the three: at an angle of 120° or
 * more, or where two of them are one.
 *
 * In barycentric coordinates a / sin(A + 60°) : b / sin(B + 60°) : c / sin(C + 60°), with the sides and the angles opposite to them.
 *
 * Source: C. Kimberling, Encyclopedia of Triangle Centers, X(13), the first isogonic center (from memory).
 */
export function fermatPoint(a: PlanePoint, b: PlanePoint, c: PlanePoint): PlanePoint | undefined {
  const cosines = [cosineAt(a, b, c), cosineAt(b, c, a), cosineAt(c, a, b)]
  if (!cosines.every((cosine) => cosine > -0.5 && cosine < 1)) return undefined
  const sides = [apart(b, c), apart(c, a), apart(a, b)]
  const weights = cosines.map(
    (cosine, k) => sides[k]! / Math.sin(Math.acos(Math.max(-1, cosine)) + Math.PI / 3),
  )
  const sum = weights[0]! + weights[1]! + weights[2]!
  const mean = (at: 0 | 1) => (weights[0]! * a[at] + weights[1]! * b[at] + weights[2]! * c[at]) / sum
  return [mean(0), mean(1)]
}
