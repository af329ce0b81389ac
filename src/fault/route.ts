import type { ModelLine } from '../budget/circuit-model'
import { shortestWay } from '../budget/path'
import type { Stand } from '../field/probe'

/** So much of one line. */
export interface Run {
  readonly line: ModelLine
  readonly wireM: number
}

/**
 * The wire from an instrument to a place; null where the instrument does not look that way.
 *
 * @param side which piece is meant where the instrument cuts a line, m
 */
export function routeTo(stand: Stand, line: string, wireM: number, side: number): readonly Run[] | null {
  const { model, pieces, meter } = stand
  const piece = pieces.findIndex(
    (each, k) =>
      each.line === line &&
      model.lines[k]!.wireM > 0 &&
      side >= each.fromM &&
      side <= each.fromM + model.lines[k]!.wireM,
  )
  const own = model.lines[piece]
  if (!own) return null
  const alongM = Math.min(own.wireM, Math.max(0, wireM - pieces[piece]!.fromM))
  const over = (node: number, restM: number) => {
    const way = shortestWay(model, meter, node)
    // What leads over the line itself comes from its other end.
    if (!way || way.includes(own)) return null
    return [...way.map((each): Run => ({ line: each, wireM: each.wireM })), { line: own, wireM: restM }]
  }
  const ways = [over(own.from, alongM), over(own.to, own.wireM - alongM)].filter((way) => way !== null)
  return ways.sort((a, b) => lengthM(a) - lengthM(b))[0] ?? null
}

export const lengthM = (runs: readonly Run[]): number => runs.reduce((sum, { wireM }) => sum + wireM, 0)

/** The wire from an instrument to the end that it looks to. */
export const routeToFar = ({ model, meter, far }: Stand): readonly Run[] =>
  (shortestWay(model, meter, far) ?? []).map((line) => ({ line, wireM: line.wireM }))

/** Of the wire to a place, what lies on the wire to another, and what turns off from there. */
export function parted(
  route: readonly Run[],
  way: readonly Run[],
): { readonly shared: readonly Run[]; readonly off: readonly Run[] } {
  const shared: Run[] = []
  const off: Run[] = []
  for (const run of route) (way.some(({ line }) => line === run.line) ? shared : off).push(run)
  return { shared, off }
}
