import {
  type Box,
  boxAround,
  clipSegment,
  cross,
  lengthOf,
  overlap,
  type Point,
  type Segment,
  within,
} from '../../figure/geometry'

/** A text that wants to stand near a point. */
export interface Label {
  readonly id: string
  readonly text: string
  readonly widthMm: number
  readonly heightMm: number
  readonly at: Point
  /** Half the size of the symbol at that point, mm: the label keeps clear of it. */
  readonly clearMm: number
}

export interface PlacedLabel {
  readonly label: Label
  readonly box: Box
  /** From the point to the label, where the label stands too far off to be understood without. */
  readonly leader?: Segment
}

export interface Placement {
  readonly placed: readonly PlacedLabel[]
  /** Those for which there was no free room: the paper lists them beside the drawing. */
  readonly unplaced: readonly Label[]
}

/** What a label must not cover, and what it had better not cover. */
export interface Surroundings {
  readonly bounds: Box
  /** How far from its point a label may stand, mm; as far as it takes where absent. */
  readonly reachMm?: number
  /** Symbols and frames: never covered. */
  readonly obstacles: readonly Box[]
  /** Wires and edges: covered only where no free place is near. */
  readonly strokes: readonly Segment[]
}

/** Directions to try, best first: beside and above read more easily than below. */
const DIRECTIONS: readonly Point[] = [
  [1, -0.5],
  [-1, -0.5],
  [0, -1],
  [0, 1],
  [1, 0.5],
  [-1, 0.5],
  [1, 0],
  [-1, 0],
  [0.5, -1],
  [-0.5, -1],
  [0.5, 1],
  [-0.5, 1],
]
/** How far off the point to try, mm beyond the symbol. */
const RINGS_MM = [0.6, 2.5, 5, 8, 12, 17, 23, 30, 40, 55]
/** From this ring on a leader shows what the label belongs to. */
const LEADER_FROM_MM = 4

const boxAt = (label: Label, [dx, dy]: Point, ringMm: number): Box =>
  boxAround(
    [
      label.at[0] + dx * (label.clearMm + ringMm + label.widthMm / 2),
      label.at[1] + dy * (label.clearMm + ringMm + label.heightMm / 2),
    ],
    label.widthMm,
    label.heightMm,
  )

const nearestIn = (box: Box, [x, y]: Point): Point => [
  Math.min(box.right, Math.max(box.left, x)),
  Math.min(box.bottom, Math.max(box.top, y)),
]

/**
 * Places labels one after another, so that none lies over another, over a symbol or out of bounds; near its point before
 * far, off the wires before on them. The same labels in the same order always come to stand the same.
 */
export function placeLabels(labels: readonly Label[], around: Surroundings): Placement {
  const taken: Box[] = [...around.obstacles]
  const leaders: Segment[] = []
  const placed: PlacedLabel[] = []
  const unplaced: Label[] = []

  const costOf = (label: Label, box: Box, ringMm: number, rank: number): number => {
    if (!within(box, around.bounds) || taken.some((other) => overlap(box, other)))
      return Number.POSITIVE_INFINITY
    if (leaders.some((leader) => clipSegment(leader, box))) return Number.POSITIVE_INFINITY
    let cost = ringMm * 1.5 + rank * 0.15
    for (const stroke of around.strokes) {
      const covered = clipSegment(stroke, box)
      if (covered) cost += 6 + 3 * lengthOf(covered)
    }
    if (ringMm >= LEADER_FROM_MM) {
      const leader: Segment = [label.at, nearestIn(box, label.at)]
      for (const other of taken) {
        const holdsPoint = overlap(other, boxAround(label.at, 0.01, 0.01))
        if (!holdsPoint && clipSegment(leader, other)) cost += 40
      }
      for (const other of leaders) if (cross(leader, other)) cost += 40
      for (const stroke of around.strokes) if (cross(leader, stroke)) cost += 2
    }
    return cost
  }

  for (const label of labels) {
    let best: { readonly box: Box; readonly ringMm: number; readonly cost: number } | undefined
    for (const ringMm of RINGS_MM) {
      if (ringMm > (around.reachMm ?? Number.POSITIVE_INFINITY)) break
      // A farther ring costs at least its distance: past that, nothing better can come.
      if (best && best.cost <= ringMm * 1.5) break
      for (const [rank, direction] of DIRECTIONS.entries()) {
        const box = boxAt(label, direction, ringMm)
        const cost = costOf(label, box, ringMm, rank)
        if (cost < (best?.cost ?? Number.POSITIVE_INFINITY)) best = { box, ringMm, cost }
      }
    }
    if (!best) {
      unplaced.push(label)
      continue
    }
    taken.push(best.box)
    if (best.ringMm < LEADER_FROM_MM) {
      placed.push({ label, box: best.box })
      continue
    }
    const leader: Segment = [label.at, nearestIn(best.box, label.at)]
    leaders.push(leader)
    placed.push({ label, box: best.box, leader })
  }
  return { placed, unplaced }
}
