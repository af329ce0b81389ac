import type { CircuitModel } from '../../src/budget/circuit-model'
import { conditionsOf } from '../../src/budget/conditions'
import type { Supply } from '../../src/catalog/supply'
import type { TelephoneSet } from '../../src/catalog/telephone-set'
import type { Wire } from '../../src/catalog/wire'

/** Wire that has resistance and nothing else, as loop-limit rules reckon: 1000 Ω of loop per km. */
export const OHMS_ONLY: Wire = {
  id: 'ohms-only',
  name: 'Resistance alone',
  loopOhmPerKm: 1000,
  tempCoeffPerC: 0,
  nanoFPerKm: 0,
  loopMilliHPerKm: 0,
  dryMicroSPerKm: 0,
  wetMicroSPerKm: 0,
  kgPerKm: 1,
  breakN: 1,
  spoolsM: [],
  source: 'ideal',
}

export const plainSet = (set: Partial<TelephoneSet> & Pick<TelephoneSet, 'offHook'>): TelephoneSet => ({
  id: 'plain',
  name: 'Set',
  talk: 'common',
  maxLossDb: 30,
  source: 'ideal',
  ...set,
})

export const DRY = conditionsOf('dry', 20)

/** Sets in a row, joined by wire of so many metres; the supply stands at the first. */
export function rowOfSets(
  sets: readonly TelephoneSet[],
  wire: Wire,
  wireM: number,
  supply: Supply | null = null,
): CircuitModel {
  return {
    stations: sets.map((_, k) => `s${k}`),
    lines: sets
      .slice(1)
      .map((_, k) => ({ id: `l${k}`, from: k, to: k + 1, wire, wireM, electrodeOhms: null })),
    sets: sets.map((set, node) => ({ node, set })),
    supply: supply && { supply, node: 0 },
  }
}
