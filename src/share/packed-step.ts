import type { Edit } from '../journal/edit'
import { isObject } from '../schema/schema'

/** A step as it travels: the number of its first edit, when it was done, and its edits without what they have in common. */
type PackedStep = readonly [number: number, at: number, edits: readonly PackedEdit[]]
type PackedEdit = {
  readonly k: string
  readonly o?: readonly string[]
  readonly v?: unknown
  readonly w?: unknown
}

export function packedStep(edits: readonly Edit[]): PackedStep {
  const [first] = edits
  if (!first) throw new Error('a step has an edit at least')
  const packed = edits.map(({ key, over, value, was }) => ({
    k: key,
    ...(over.length > 0 && { o: over }),
    ...(value !== undefined && { v: value }),
    ...(was !== undefined && { w: was }),
  }))
  return [first.number, first.at, packed]
}

/** The edits of a step that a hand signed: whose they are is told by the signature alone. A sentence where it is none. */
export function stepOfPacked(hand: string, value: unknown): readonly Edit[] | string {
  const [number, at, packed] = Array.isArray(value) ? (value as unknown[]) : []
  if (typeof number !== 'number' || typeof at !== 'number' || !Array.isArray(packed) || packed.length === 0)
    return NONE
  const edits: Edit[] = []
  for (const [index, each] of packed.entries()) {
    if (!isObject(each)) return NONE
    const { k: key, o: over = [], v, w } = each
    edits.push({
      ...{ hand, number: number + index, at, key, over },
      ...(index + 1 < packed.length && { left: packed.length - 1 - index }),
      ...(v !== undefined && { value: v }),
      ...(w !== undefined && { was: w }),
    } as Edit)
  }
  return edits
}

const NONE = 'A step came in that is none: it is left out.'
