import type { Country } from './country'
import { RODS_OF_A_LINE } from './net-design'
import { type Run, strandsOf } from './runs'

/** What is still on the shelf while a net is put together. */
export interface Left {
  readonly wireM: readonly number[]
  readonly sets: readonly number[]
  readonly supplies: readonly number[]
  readonly cells: readonly number[]
  readonly rods: readonly number[]
}

export const allOf = ({ wires, sets, supplies, cells, rods }: Country): Left => ({
  wireM: wires.map(({ reachM }) => reachM),
  sets: sets.map(({ count }) => count),
  supplies: supplies.map(({ count }) => count),
  cells,
  rods: rods.map(({ count }) => count),
})

/** What a run leaves; undefined where it is not there. Wire that is used one way is gone for every other. */
export function without({ wires }: Country, left: Left, run: Run): Left | undefined {
  const wireM = [...left.wireM]
  const rods = [...left.rods]
  for (const { kind, way, rod } of run.flatMap(strandsOf)) {
    wireM[kind]! -= way.wireM
    if (wireM[kind]! < 0) return undefined
    for (const [other, { pool }] of wires.entries())
      if (other !== kind && pool === wires[kind]!.pool) wireM[other] = 0
    if (rod === undefined) continue
    rods[rod]! -= RODS_OF_A_LINE
    if (rods[rod]! < 0) return undefined
  }
  return { ...left, wireM, rods }
}
