import type { Wire } from './wire'

/**
 * So many pairs of a cable as one, one wire of each in either leg: R/n and L/n, n·C and n·G. Mass and strength are those of the whole
 * cable, as the entry of one pair has them.
 *
 * Source: conductors in parallel, by definition.
 */
export function pairsAsOne(wire: Wire, pairs: number): Wire {
  const { wornMicroSPerKm, wetNanoFPerKm, phantomNanoFPerKm: _, ...of } = wire
  return {
    ...of,
    id: `${wire.id}-${pairs}-pairs`,
    name: `${wire.name}, ${pairs} such pairs as one`,
    loopOhmPerKm: wire.loopOhmPerKm / pairs,
    loopMilliHPerKm: wire.loopMilliHPerKm / pairs,
    nanoFPerKm: wire.nanoFPerKm * pairs,
    dryMicroSPerKm: wire.dryMicroSPerKm * pairs,
    wetMicroSPerKm: wire.wetMicroSPerKm * pairs,
    ...(wornMicroSPerKm !== undefined && { wornMicroSPerKm: wornMicroSPerKm * pairs }),
    ...(wetNanoFPerKm !== undefined && { wetNanoFPerKm: wetNanoFPerKm * pairs }),
    source: `derived: ${pairs} pairs side by side of ${wire.name}: ${wire.source}`,
  }
}

/**
 * One wire of a pair by itself, for an earth return. Its electrical figures stay those of a loop kilometre of such wire, as an entry has
 * them: an earth return takes half of the resistance. Mass and strength are half of the pair's.
 */
export function oneWireOf(wire: Wire): Wire {
  const { breakN, stiffnessN, phantomNanoFPerKm: _, ...of } = wire
  return {
    ...of,
    id: `${wire.id}-one-wire`,
    name: `${wire.name}, one wire of it`,
    kgPerKm: wire.kgPerKm / 2,
    ...(breakN !== undefined && { breakN: breakN / 2 }),
    ...(stiffnessN !== undefined && { stiffnessN: stiffnessN / 2 }),
    source: `derived: half of the pair ${wire.name}: ${wire.source}`,
  }
}
