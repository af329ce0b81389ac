import { type Signal, signal } from '@preact/signals'
import { BUILT_IN } from '../../catalog/built-in'
import type { CatalogEntries } from '../../catalog/catalog'
import { formatStores, shelfOf } from '../../files/parse-shelf'
import type { Result } from '../../problem'
import { everyPair, type Shelf } from '../../shelf/shelf'
import { MOST_PLACES, USUAL_SOIL } from '../../shelf/shelf-schema'
import type { Store } from '../../state/store'

/** What a person wants joined, as far as it was said. */
export interface Wanted {
  readonly from: Signal<'map' | 'distances'>
  /** Names of typed places, and how far it is between each two, m, by `a b`. */
  readonly names: Signal<readonly string[]>
  readonly distancesM: Signal<ReadonlyMap<string, number>>
  /** Everybody with everybody; everybody with one place, by its index; or some pairs, by `a b`. */
  readonly talk: Signal<'all' | 'pairs' | number>
  readonly pairs: Signal<ReadonlySet<string>>
  /** Who may agree on times to call, so that nobody need be rung: nobody, all who talk, or some pairs of them. */
  readonly agree: Signal<'nobody' | 'all' | 'some'>
  readonly agreed: Signal<ReadonlySet<string>>
  /** Id of the ground in which earth rods are driven. */
  readonly soil: Signal<string>
}

/** What is offered before a distance is typed, m. */
const USUAL_M = 500

const canBeJoined = (count: number): boolean => count >= 2 && count <= MOST_PLACES

export const createWanted = (store: Store): Wanted => ({
  from: signal(canBeJoined(store.settled.peek().stations.size) ? 'map' : 'distances'),
  names: signal(['Camp', 'Ford']),
  distancesM: signal(new Map()),
  talk: signal('all'),
  pairs: signal(new Set()),
  agree: signal('nobody'),
  agreed: signal(new Set()),
  soil: signal(USUAL_SOIL),
})

/** The places as they stand now: names alone. */
export const placeNames = (store: Store, { from, names }: Wanted): readonly string[] =>
  from.value === 'map'
    ? [...store.settled.value.stations.values()].map(({ name, id }) => name || id)
    : names.value

export const distanceOf = ({ distancesM }: Wanted, a: number, b: number): number =>
  distancesM.value.get(`${a} ${b}`) ?? USUAL_M

type Pair = readonly [number, number]

/** Who must reach whom, by the indices of places. */
export const talkingPairs = ({ talk, pairs }: Wanted, count: number): readonly Pair[] =>
  everyPair(count).filter(([a, b]) => {
    const who = talk.value
    if (who === 'all') return true
    return typeof who === 'number' ? a === who || b === who : pairs.value.has(`${a} ${b}`)
  })

/** All that was said as a shelf, read as strictly as one from a file. */
export function wantedShelf(store: Store, wanted: Wanted): Result<Shelf> {
  const plan = store.settled.peek()
  const onMap = wanted.from.peek() === 'map'
  const stations = [...plan.stations.values()]
  const names = wanted.names.peek()
  const places = onMap
    ? stations.map(({ id, name, position: [lon, lat] }) => ({ id, name, lon, lat }))
    : names.map((name, k) => ({ id: `p${k + 1}`, name }))
  const between = (a: number, b: number) => (a === b ? 0 : distanceOf(wanted, Math.min(a, b), Math.max(a, b)))
  const who = wanted.talk.peek()
  const ids = places.map(({ id }) => id)
  const named = (pairs: readonly Pair[]) => pairs.map(([a, b]) => [ids[a], ids[b]])
  const pairs = talkingPairs(wanted, places.length)
  const agree = wanted.agree.peek()
  const agreed = pairs.filter(([a, b]) => wanted.agreed.peek().has(`${a} ${b}`))
  return shelfOf({
    places,
    ...(!onMap && { distancesM: names.map((_, a) => names.map((__, b) => between(a, b))) }),
    talk: who === 'all' ? 'all' : named(pairs),
    ...(agree !== 'nobody' && { agree: agree === 'all' ? 'all' : named(agreed) }),
    weather: plan.weather,
    wireTempC: plan.wireTempC,
    soil: wanted.soil.peek(),
    have: formatStores(store.onShelf.peek()),
    catalog: ownEntries(store),
  })
}

/** Everything that can be chosen and is not built in. */
function ownEntries({ choices }: Store): CatalogEntries {
  const own = <K extends keyof CatalogEntries>(kind: K) => {
    const builtIn = new Set<object>(BUILT_IN[kind])
    return choices[kind].peek().filter((entry) => !builtIn.has(entry)) as CatalogEntries[K]
  }
  return { wires: own('wires'), sets: own('sets'), supplies: own('supplies') }
}
