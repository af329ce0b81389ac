import type { ModelLine } from '../budget/circuit-model'
import type { Wire } from '../catalog/wire'
import type { Weather } from '../plan/plan'

/** Figures of a wire that an instrument can tell something of. */
export const WIRE_FIGURES = [
  'loopOhmPerKm',
  'nanoFPerKm',
  'wetNanoFPerKm',
  'dryMicroSPerKm',
  'wetMicroSPerKm',
  'wornMicroSPerKm',
] as const

export type WireMember = (typeof WIRE_FIGURES)[number]

/** One figure of one lot of wire, as what is not known exactly. */
export interface WireFigure {
  readonly wire: string
  readonly member: WireMember
  /** Standard deviation of its logarithm, from the spread of its entry; 0: exact. */
  readonly sigma: number
}

/**
 * Standard deviation of the logarithm of what lies within `pct` of its middle 95 times of a hundred: ln(1 + p/100) / 1.96, as
 * PLAN-FORMAT has it.
 */
export const sigmaOf = (pct: number): number => Math.log(1 + pct / 100) / 1.96

/** The same as a spread, %. */
export const spreadOf = (sigma: number): number => 100 * Math.expm1(1.96 * sigma)

/** The figures of some wires, each with how far it may lie from what the catalog says. */
export function figuresOf(wires: Iterable<Wire>): readonly WireFigure[] {
  const once = new Map([...wires].map((wire) => [wire.id, wire]))
  return [...once.values()].flatMap((wire) =>
    WIRE_FIGURES.filter((member) => (wire[member] ?? 0) > 0).map((member) => ({
      wire: wire.id,
      member,
      sigma: sigmaOf(wire.spread?.[member] ?? 0),
    })),
  )
}

/** A wire whose figures are so many nepers more than the catalog's. */
export function scaledWire(
  wire: Wire,
  figures: readonly WireFigure[],
  nepers: ArrayLike<number>,
  besides?: { readonly figure: number; readonly nepers: number },
): Wire {
  let scaled = wire
  for (const [k, { wire: id, member }] of figures.entries()) {
    if (id !== wire.id) continue
    const more = nepers[k]! + (besides?.figure === k ? besides.nepers : 0)
    if (more !== 0) scaled = { ...scaled, [member]: wire[member]! * Math.exp(more) }
  }
  return scaled
}

/** Whether a figure can matter to what is read on a line at a frequency in one weather. */
export function matters(
  { wire: id, member }: WireFigure,
  { wire, worn }: Pick<ModelLine, 'wire' | 'worn'>,
  weather: Weather,
  hz: number,
): boolean {
  if (id !== wire.id) return false
  const wet = weather === 'wet'
  switch (member) {
    case 'loopOhmPerKm':
      return true
    case 'nanoFPerKm':
      return hz > 0 && (!wet || wire.wetNanoFPerKm === undefined)
    case 'wetNanoFPerKm':
      return hz > 0 && wet
    case 'dryMicroSPerKm':
      return !wet
    case 'wetMicroSPerKm':
      return wet && !(worn && wire.wornMicroSPerKm !== undefined)
    case 'wornMicroSPerKm':
      return wet && worn === true
  }
}
