import type { Lack } from '../budget/circuit-notes'
import type { Check, Verdict } from '../budget/rows'
import type { Supply } from '../catalog/supply'
import type { LaidNet } from './best-so-far'
import type { Country } from './country'
import { findNets } from './find-nets'
import type { Verdicts } from './judge-net'
import { leastWireM } from './least-wire'
import { compareRanks, isGood, standing } from './rank-nets'
import type { Shelf, Stores } from './shelf'
import { isWireable } from './wireable'

/** One thing more that a shelf could have. */
export type Thing =
  | { readonly kind: 'wire'; readonly id: string; readonly lengthM: number }
  | { readonly kind: 'set' | 'supply' | 'cell'; readonly id: string }

/** What a shelf lacks for a net, each with its figures. */
export type Want =
  | { readonly code: 'sets'; readonly count: number }
  /** `wire` is null where there is none of any kind. */
  | { readonly code: 'wire'; readonly wire: string | null; readonly lengthM: number }
  | { readonly code: 'lacks'; readonly lack: Lack }
  | { readonly code: 'check'; readonly check: Check }
  | { readonly code: 'cannot-speak' }
  | { readonly code: 'thing'; readonly thing: Thing; readonly verdict: Verdict; readonly worst: Verdict }

/** Wire that is lacking is told to this many metres, rounded up. */
const TO_M = 10
/** What is spent on what one more thing would bring, as a share of a whole search. */
const EFFORT = 0.05
const LISTED = 3

/** The country of the same places with one thing more on the shelf. */
export type CountryWith = (thing: Thing) => Country

/** A shelf with one thing more on it. */
export function withThing(shelf: Shelf, thing: Thing): Shelf {
  const { have } = shelf
  const one = { id: thing.id, count: 1 }
  const alike = (lengthM: number) =>
    have.wires.find((each) => each.wire === thing.id && each.lengthM === lengthM)
  const more: Stores =
    thing.kind === 'wire'
      ? {
          ...have,
          wires: [
            ...have.wires,
            { ...alike(thing.lengthM), wire: thing.id, lengthM: thing.lengthM, count: 1 },
          ],
        }
      : thing.kind === 'set'
        ? { ...have, sets: [...have.sets, one] }
        : thing.kind === 'supply'
          ? { ...have, supplies: [...have.supplies, one] }
          : { ...have, cells: [...have.cells, one] }
  return { ...shelf, have: more }
}

/**
 * What a shelf lacks where none of its nets works: telephones, wire; or what fails in the nearest miss, and what one thing more would mend.
 *
 * @param misses the nearest misses, the nearest first
 * @param more what one thing more would bring
 */
export function lackingOf(
  country: Country,
  misses: readonly LaidNet[],
  more: readonly Gain[],
  countryWith: CountryWith,
): readonly Want[] {
  const { places, have } = country.shelf
  const wants: Want[] = []
  const telephones = have.sets.reduce((sum, { count }) => sum + count, 0)
  if (telephones < places.length) wants.push({ code: 'sets', count: places.length - telephones })
  const wire = wireLacking(country, countryWith)
  if (wire) wants.push(wire)
  const [nearest] = misses
  if (nearest) {
    const { lacks, check, speaks, verdict } = nearest.judged
    if (!speaks) wants.push({ code: 'cannot-speak' })
    wants.push(...lacks.map((lack): Want => ({ code: 'lacks', lack })))
    if (lacks.length === 0 && verdict === 'fails' && check) wants.push({ code: 'check', check })
    for (const { thing, net } of more) {
      const { verdict: then, worst } = net.judged
      wants.push({ code: 'thing', thing, verdict: then, worst })
    }
  }
  return wants
}

/** How much more of one wire would join all places: the least of all wires, to ten metres. */
function wireLacking(country: Country, countryWith: CountryWith): Want | undefined {
  if (isWireable(country)) return undefined
  const { wires } = country
  const upM = (m: number) => Math.ceil(m / TO_M - 1e-9) * TO_M
  const mostM = 2 * leastWireM(country) + TO_M
  if (wires.length === 0) return { code: 'wire', wire: null, lengthM: upM(leastWireM(country)) }
  const each = [...new Set(wires.map(({ of }) => of))].map((wire) => {
    const isEnough = (lengthM: number) => isWireable(countryWith({ kind: 'wire', id: wire, lengthM }))
    let [low, high] = [0, upM(mostM)]
    while (high - low > TO_M) {
      const middle = upM((low + high) / 2)
      if (isEnough(middle)) high = middle
      else low = middle
    }
    return { code: 'wire' as const, wire, lengthM: high }
  })
  return each.reduce((a, b) => (b.lengthM < a.lengthM ? b : a))
}

/** What one thing more would bring. */
export interface Gain {
  readonly thing: Thing
  readonly net: LaidNet
}

/** Things that are worth asking for: one more of each that there is, and of each kind of supply the lightest that would do. */
export function thingsToAsk({ shelf }: Country): readonly Thing[] {
  const { have, places, catalog } = shelf
  const longest = new Map<string, number>()
  for (const { wire, lengthM } of have.wires) longest.set(wire, Math.max(longest.get(wire) ?? 0, lengthM))
  const once = (list: Stores['sets'], kind: 'set' | 'supply' | 'cell') =>
    [...new Set(list.map(({ id }) => id))].map((id): Thing => ({ kind, id }))
  const supplies = [...catalog.supplies.values()]
  const kinds: readonly Supply['kind'][] = ['feed', 'series', 'ringdown', 'exchange', 'board']
  const lightest = kinds.flatMap((kind): Thing[] => {
    const fit = supplies.filter(
      (each) => each.kind === kind && (each.ports ?? places.length) >= places.length && each.kg !== undefined,
    )
    const ringing = fit.filter(({ ring }) => ring)
    const [first] = (ringing.length > 0 ? ringing : fit).sort((a, b) => a.kg! - b.kg!)
    return first ? [{ kind: 'supply', id: first.id }] : []
  })
  const asked = [
    ...[...longest].map(([id, lengthM]): Thing => ({ kind: 'wire', id, lengthM })),
    ...once(have.sets, 'set'),
    ...once(have.cells, 'cell'),
    ...once(have.supplies, 'supply'),
    ...lightest,
  ]
  const known = new Set<string>()
  return asked.filter((thing) => {
    const key = `${thing.kind} ${thing.id}`
    return !known.has(key) && known.add(key)
  })
}

/**
 * What one thing more would bring: each thing is put on the shelf, and nets are sought anew. Told are those with which the best net stands
 * better (a better verdict, today or at worst, or one more pair that can call), the greatest gain first.
 */
export function gainsOf(
  country: Country,
  best: LaidNet | undefined,
  countryWith: CountryWith,
  { isStopped = () => false, known }: { readonly isStopped?: () => boolean; readonly known?: Verdicts } = {},
): readonly Gain[] {
  const { verdict, worst, silent } = best?.judged ?? {}
  if (verdict === 'works' && worst === 'works' && silent?.length === 0 && best && isGood(best)) return []
  const gains: Gain[] = []
  for (const thing of thingsToAsk(country)) {
    if (isStopped()) break
    const [net] = findNets(
      countryWith(thing),
      { isStopped },
      { effort: EFFORT, ...(known && { known }) },
    ).nets
    if (
      net &&
      isGood(net) &&
      (!best || !isGood(best) || compareRanks(standing(net.rank), standing(best.rank)) > 0)
    )
      gains.push({ thing, net })
  }
  return gains.sort((a, b) => compareRanks(b.net.rank, a.net.rank)).slice(0, LISTED)
}
