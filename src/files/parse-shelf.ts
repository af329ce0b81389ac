import { BUILT_IN, CELL_MASSES } from '../catalog/built-in'
import { type CatalogEntries, mergeCatalogs } from '../catalog/catalog'
import { EARTH_RODS, SOILS } from '../catalog/soils'
import { OWN_ENTRIES } from '../plan/own-entries'
import { bad, ok, type Problem, type Result } from '../problem'
import { faultsOf } from '../schema/faults'
import { taken } from '../schema/kept'
import { valueWords } from '../schema/limit'
import { isObject, type Members } from '../schema/schema'
import { asMeasured } from '../shelf/measured-things'
import {
  type Counted,
  everyPair,
  type MeasuredFigures,
  type Place,
  type Shelf,
  type Stores,
} from '../shelf/shelf'
import { HAVE, SHELF_FILE, type ShelfFile } from '../shelf/shelf-schema'
import { parseJson } from './json-text'
import { knownIds, repeatedIds } from './known-ids'
import { textOf } from './text-bytes'

/** The bytes of a shelf file to a shelf, or to all that is wrong with it, each fault with its place in the file. */
export function parseShelfBytes(bytes: Uint8Array): Result<Shelf> {
  const text = textOf(bytes)
  if (!text.ok) return text
  const json = parseJson(text.value)
  return json.ok ? shelfOf(json.value) : json
}

/** A value from outside to a shelf, or to all that is wrong with it. */
export function shelfOf(value: unknown): Result<Shelf> {
  if (!isObject(value) || !Array.isArray(value.places)) {
    const message =
      'This is no shelf: it has no list "places". Say which places must talk, and what there is.'
    return bad({ code: 'no-shelf', at: isObject(value) ? 'places' : 'file', message })
  }
  const known = {
    ...knownIds([], { catalog: value.catalog }, BUILT_IN),
    cell: new Set(CELL_MASSES.map(({ id }) => id)),
    'earth rod': new Set(EARTH_RODS.map(({ id }) => id)),
    soil: new Set(SOILS.map(({ id }) => id)),
    place: new Set(value.places.flatMap(namesOf)),
  }
  const faults: Problem[] = [...faultsOf(SHELF_FILE, value, '', known)]
  repeatedIds(value.places, 'places', faults)
  for (const name of Object.keys(OWN_ENTRIES.entries)) {
    const list = isObject(value.catalog) ? value.catalog[name] : undefined
    if (Array.isArray(list)) repeatedIds(list, `catalog.${name}`, faults)
  }
  if (faults.length > 0) return bad(...faults)
  const file = taken(SHELF_FILE, value)
  const places = placesOf(file, faults)
  distanceFaults(file, places, faults)
  const talk = pairsOf('talk', file.talk, places, faults)
  const agree = agreeOf(file, talk, places, faults)
  if (faults.length > 0) return bad(...faults)
  const { unknown: _, ...own } = file.catalog
  const catalog = mergeCatalogs(BUILT_IN, own)
  const measured = asMeasured(storesFrom(file.have), catalog)
  if (!measured.ok) return measured
  const entries = joined(own, measured.value.own)
  return ok({
    title: file.title ?? '',
    places,
    distancesM: file.distancesM ?? null,
    talk,
    agree,
    weather: file.weather,
    wireTempC: file.wireTempC,
    soil: file.soil,
    have: measured.value.have,
    own: entries,
    catalog: mergeCatalogs(BUILT_IN, entries),
  })
}

const joined = (a: CatalogEntries, b: CatalogEntries): CatalogEntries => ({
  wires: [...a.wires, ...b.wires],
  sets: [...a.sets, ...b.sets],
  supplies: [...a.supplies, ...b.supplies],
})

function storesFrom({ wires, sets, supplies, cells, rods }: ShelfFile['have']): Stores {
  return {
    wires: wires.map(({ wire, lengthM, count, pairs, single, measured }) => ({
      ...{ wire, lengthM, count },
      ...(pairs !== undefined && pairs > 1 && { pairs }),
      ...(single && { isSingle: single }),
      ...readings(measured),
    })),
    sets: sets.map(({ set, count, measured }) => ({ id: set, count, ...readings(measured) })),
    supplies: supplies.map(({ supply, count, measured }) => ({ id: supply, count, ...readings(measured) })),
    cells: cells.map(({ cell, count, measured }) => ({ id: cell, count, ...readings(measured) })),
    rods: rods.map(({ rod, count, measured }) => ({ id: rod, count, ...readings(measured) })),
  }
}

/** What was read, without what a file says besides; nothing where nothing was. */
function readings(measured: Readonly<Record<string, unknown>> | undefined) {
  const read = Object.entries(measured ?? {}).filter(([, value]) => typeof value === 'number')
  return read.length > 0 ? { measured: Object.fromEntries(read) as MeasuredFigures } : {}
}

/** What there is, as a shelf file has it. */
export function formatStores({ wires, sets, supplies, cells, rods }: Stores) {
  const counted = <K extends string>(list: readonly Counted[], of: K) =>
    list.map(({ id, ...each }) => ({ [of]: id, ...each }) as Record<K, string> & Omit<Counted, 'id'>)
  return {
    wires: wires.map(({ isSingle, ...each }) => ({ ...each, ...(isSingle && { single: isSingle }) })),
    sets: counted(sets, 'set'),
    supplies: counted(supplies, 'supply'),
    cells: counted(cells, 'cell'),
    rods: counted(rods, 'rod'),
  }
}

/** What there is, from a value that was kept; undefined where it is none. Entries need not be known here: they may come back. */
export const storesOf = (value: unknown): Stores | undefined =>
  faultsOf(HAVE, value, '').length > 0 ? undefined : storesFrom(taken(HAVE, value))

/** What a pair may call a place by: its id, or its name. */
const namesOf = (place: unknown): readonly unknown[] => (isObject(place) ? [place.id, place.name] : [place])

const said = (place: ShelfFile['places'][number]): Members =>
  typeof place === 'string' ? { name: place } : (place as Members)

function placesOf({ places, distancesM }: ShelfFile, faults: Problem[]): readonly Place[] {
  const taken = new Set(places.map((place) => said(place).id))
  return places.map((place, index) => {
    const { id, name, lon, lat } = said(place)
    const at = `places[${index}]`
    if (id === undefined && !name) {
      const message = 'The place has neither an id nor a name: give it one of them.'
      faults.push({ code: 'missing', at, message })
    }
    if ((lon === undefined) !== (lat === undefined)) {
      const [has, lacks] = lon === undefined ? ['latitude', 'lon'] : ['longitude', 'lat']
      const message = `The place has a ${has} only: give "${lacks}" too, or neither and "distancesM".`
      faults.push({ code: 'missing', at: `${at}.${lacks}`, message })
    } else if (lon === undefined && !distancesM) {
      const message =
        'The place has no position: give "lon" and "lat", or the distances of all places in "distancesM".'
      faults.push({ code: 'missing', at: `${at}.lon`, message })
    }
    let free = (id as string | undefined) ?? `p${index}`
    while (id === undefined && taken.has(free)) free = `${free}-`
    const position = lon === undefined || lat === undefined ? null : ([lon, lat] as [number, number])
    return { id: free, name: (name as string | undefined) || free, position }
  })
}

/** Distances that are not one for each two places, the same both ways. */
function distanceFaults({ distancesM }: ShelfFile, places: readonly Place[], faults: Problem[]): void {
  if (!distancesM) return
  const { length } = places
  const counted = (count: number, at: string, what: string) => {
    if (count === length) return true
    const message = `${what} has ${count} entries, and there are ${length} places: give one for each place.`
    faults.push({ code: 'wrong-count', at, message })
    return false
  }
  const isSquare = [
    counted(distancesM.length, 'distancesM', 'The list of distances'),
    ...distancesM.map((row, i) => counted(row.length, `distancesM[${i}]`, 'The row of distances')),
  ].every(Boolean)
  if (!isSquare) return
  distancesM.forEach((row, i) => {
    row.forEach((m, j) => {
      const at = `distancesM[${i}][${j}]`
      const back = distancesM[j]![i]!
      if (i === j && m !== 0) {
        const message = `The distance from a place to itself is ${valueWords(m)}: give 0.`
        faults.push({ code: 'out-of-range', at, message })
      } else if (i < j && m !== back) {
        const message = `The distance is ${valueWords(m)} m there and ${valueWords(back)} m back (distancesM[${j}][${i}]): give the same both ways.`
        faults.push({ code: 'contradiction', at, message })
      } else if (i < j && m === 0) {
        const message = 'The distance between two places is 0: give more than 0 m, or make one place of them.'
        faults.push({ code: 'out-of-range', at, message })
      }
    })
  })
}

/** Those of the pairs that talk who may agree on times. */
function agreeOf(
  { agree }: ShelfFile,
  talk: Shelf['talk'],
  places: readonly Place[],
  faults: Problem[],
): Shelf['agree'] {
  if (agree === undefined) return []
  if (agree === 'all') return talk
  const pairs = pairsOf('agree', agree, places, faults)
  const talks = ([a, b]: readonly [number, number]) => talk.some(([c, d]) => a === c && b === d)
  const other = pairs.find((pair) => !talks(pair))
  if (other) {
    const [a, b] = other.map((place) => valueWords(places[place]?.name))
    const message = `${a} and ${b} may agree on times, but need not talk: put them into "talk" too.`
    faults.push({ code: 'contradiction', at: 'agree', message })
  }
  return pairs
}

/** Pairs of places as a file names them, by their indices, the lower first. */
function pairsOf(
  member: 'talk' | 'agree',
  said: ShelfFile['talk'],
  places: readonly Place[],
  faults: Problem[],
): Shelf['talk'] {
  if (said === 'all') return everyPair(places.length)
  const indexOf = (word: string, at: string): number => {
    const byId = places.findIndex(({ id }) => id === word)
    const byName = places.flatMap(({ name }, i) => (name === word ? [i] : []))
    if (byId < 0 && byName.length > 1) {
      const message = `${valueWords(word)} is the name of several places: name the one that is meant by its id.`
      faults.push({ code: 'ambiguous', at, message })
    }
    return byId < 0 ? byName[0]! : byId
  }
  const pairs = new Map<string, readonly [number, number]>()
  ;(said as readonly (readonly [string, string])[]).forEach(([a, b], k) => {
    const [i, j] = [indexOf(a, `${member}[${k}][0]`), indexOf(b, `${member}[${k}][1]`)]
    if (i === j) {
      const message = `${valueWords(a)} is to talk with itself: name two places.`
      faults.push({ code: 'contradiction', at: `${member}[${k}]`, message })
    }
    pairs.set(`${Math.min(i, j)} ${Math.max(i, j)}`, [Math.min(i, j), Math.max(i, j)])
  })
  return [...pairs.values()]
}
