import { valueAt } from '../catalog/entry-value'
import type { Spread } from '../catalog/sources'
import type { CircuitModel } from './circuit-model'

/** One figure that is drawn anew for every sample: of a lot of wire, of one station's set, or of the supply. */
export interface DrawnFigure {
  /** The entry's own member name, dotted where it lies deeper. */
  readonly what: string
  readonly entry: string
  /** Station of the set or of the supply; null for a lot of wire. */
  readonly at: string | null
  /** Standard deviation of its logarithm. */
  readonly sigma: number
}

interface Entry {
  readonly id: string
  readonly spread?: Spread
}

/** Figures that no check of a circuit depends on. */
const ELSEWHERE = /^(kg|kgPerKm|breakN|ampHours|endVolts|powerW|battery|fedBy)(\.|$)/

/**
 * Every figure of a circuit that has a spread, and how a circuit with other figures is made from it. One value for each wire entry (it
 * comes from one lot), one for each station's set, one for the supply.
 *
 * Of a hundred real ones 95 lie between figure / (1 + p/100) and figure × (1 + p/100), log-normally: σ = ln(1 + p/100) / 1.96.
 */
export function drawnModel(model: CircuitModel): {
  readonly figures: readonly DrawnFigure[]
  /** @param normals a standard normal number for each figure */
  readonly draw: (normals: Float64Array) => CircuitModel
} {
  const figures: DrawnFigure[] = []
  const drawing = <T extends Entry>(entry: T, at: string | null): ((normals: Float64Array) => T) => {
    const own = Object.entries(entry.spread ?? {}).filter(
      ([what, pct]) => pct > 0 && !ELSEWHERE.test(what) && typeof valueAt(entry, what) === 'number',
    )
    if (own.length === 0) return () => entry
    const first = figures.length
    for (const [what, pct] of own)
      figures.push({ what, entry: entry.id, at, sigma: Math.log(1 + pct / 100) / 1.96 })
    return (normals) =>
      own.reduce((drawn, [what], k) => {
        const factor = Math.exp(figures[first + k]!.sigma * normals[first + k]!)
        return scaled(drawn, what.split('.'), factor) as T
      }, entry)
  }
  const wires = new Map(model.lines.map(({ wire }) => [wire, drawing(wire, null)]))
  const sets = model.sets.map(({ node, set }) => ({ node, draw: drawing(set, model.stations[node]!) }))
  const supply = model.supply && {
    node: model.supply.node,
    draw: drawing(model.supply.supply, model.stations[model.supply.node]!),
  }
  const draw = (normals: Float64Array): CircuitModel => {
    const drawn = new Map([...wires].map(([wire, of]) => [wire, of(normals)]))
    return {
      ...model,
      shapedAs: model.lines,
      lines: model.lines.map((line) => ({ ...line, wire: drawn.get(line.wire)! })),
      sets: sets.map(({ node, draw: of }) => ({ node, set: of(normals) })),
      supply: supply && { node: supply.node, supply: supply.draw(normals) },
    }
  }
  return { figures, draw }
}

/** The same entry with one figure multiplied. */
function scaled(entry: object, [name, ...deeper]: readonly string[], factor: number): object {
  const value = (entry as Record<string, unknown>)[name!]
  return {
    ...entry,
    [name!]: deeper.length === 0 ? (value as number) * factor : scaled(value as object, deeper, factor),
  }
}
