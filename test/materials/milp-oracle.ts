import type { Cost } from '../../src/materials/packing'

/** What HiGHS is asked and what it answers, as far as it is used here. */
export interface Solver {
  solve(problem: string, options?: object): { Status: string; ObjectiveValue: number }
}

/**
 * The least cost of laying runs from single spools, by two mixed-integer programs solved one after the other: splices before
 * spools, then the length of the spools used.
 *
 * x(i,j): run i has a piece on spool j · p(i,j): what the piece covers · y(j): spool j is used · a, b(i,j): run i begins, ends on
 * spool j. A piece takes p and half a splice at each end that is not an end of its run: waste · x − waste/2 · (a + b).
 * Nothing of it is shared with the code under test.
 */
export function leastCost(
  solver: Solver,
  needsM: readonly number[],
  spoolsM: readonly number[],
  wasteM: number,
): Cost | undefined {
  const runs = needsM.map((_, i) => i)
  const spools = spoolsM.map((_, j) => j)
  const pairs = runs.flatMap((i) => spools.map((j) => [i, j] as const))
  const rows: string[] = []
  for (const i of runs) {
    rows.push(`${spools.map((j) => `p_${i}_${j}`).join(' + ')} = ${needsM[i]}`)
    rows.push(`${spools.map((j) => `a_${i}_${j}`).join(' + ')} = 1`)
    rows.push(`${spools.map((j) => `b_${i}_${j}`).join(' + ')} = 1`)
  }
  for (const [i, j] of pairs) {
    rows.push(`p_${i}_${j} - ${needsM[i]} x_${i}_${j} <= 0`)
    rows.push(`a_${i}_${j} - x_${i}_${j} <= 0`, `b_${i}_${j} - x_${i}_${j} <= 0`)
    // A run of two pieces or more does not begin and end on the same one.
    for (const other of spools) if (other !== j) rows.push(`a_${i}_${j} + b_${i}_${j} + x_${i}_${other} <= 2`)
  }
  for (const j of spools) {
    const taken = runs.map(
      (i) => `p_${i}_${j} + ${wasteM} x_${i}_${j} - ${wasteM / 2} a_${i}_${j} - ${wasteM / 2} b_${i}_${j}`,
    )
    rows.push(`${taken.join(' + ')} - ${spoolsM[j]} y_${j} <= 0`)
    // Spools of one length are alike: the later one is used only where the earlier is.
    if (spoolsM[j] === spoolsM[j - 1]) rows.push(`y_${j} - y_${j - 1} <= 0`)
  }
  const binaries = [
    ...pairs.flatMap(([i, j]) => [`x_${i}_${j}`, `a_${i}_${j}`, `b_${i}_${j}`]),
    ...spools.map((j) => `y_${j}`),
  ]
  const pieces = pairs.map(([i, j]) => `x_${i}_${j}`).join(' + ')
  const used = spools.map((j) => `y_${j}`).join(' + ')
  const length = spools.map((j) => `${spoolsM[j]} y_${j}`).join(' + ')

  const minimum = (objective: string): number | undefined => {
    const text = [
      'Minimize',
      ` obj: ${objective}`,
      'Subject To',
      ...rows.map((row, r) => ` r${r}: ${row}`),
      'Binary',
      ` ${binaries.join(' ')}`,
      'End',
    ].join('\n')
    const { Status, ObjectiveValue } = solver.solve(text, { mip_rel_gap: 0, mip_abs_gap: 1e-3 })
    return Status === 'Optimal' ? ObjectiveValue : undefined
  }

  const manyPieces = pairs.map(([i, j]) => `${spools.length + 1} x_${i}_${j}`).join(' + ')
  const leastBoth = minimum(`${manyPieces} + ${used}`)
  if (leastBoth === undefined) return undefined
  const leastPieces = Math.floor(Math.round(leastBoth) / (spools.length + 1))
  const leastUsed = Math.round(leastBoth) % (spools.length + 1)
  rows.push(`${pieces} <= ${leastPieces}`, `${used} <= ${leastUsed}`)
  return { splices: leastPieces - needsM.length, spools: leastUsed, lengthM: minimum(length)! }
}
