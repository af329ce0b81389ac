import type { Verdict } from '../budget/rows'
import { CELL_MASSES } from '../catalog/built-in'
import { isolated } from '../isolated'
import type { Country } from '../shelf/country'
import type { Gain, Thing, Want } from '../shelf/lacking'
import { jointsOf } from '../shelf/net-design'
import { type Shape, shapeOf } from '../shelf/net-shapes'
import { soilOf } from '../shelf/rod-kinds'
import type { Shelf } from '../shelf/shelf'
import type { PlannedNet, ShelfAnswer } from '../shelf/shelf-answer'
import { checkWords } from './check-words'
import { lackSentence } from './circuit-notes'
import { layWords } from './net-lay-words'
import { callingSentence } from './outlook-words'
import type { Tongue } from './tongue'
import { formatCount, formatList } from './units'

/** Names of places are told one by one up to so many. */
const NAMED = 8

/** How one calls on a net and what makes it good, for a person who must choose: its lines, how one calls, what it has to spare. */
export function whySentence(net: PlannedNet, country: Country, say: Tongue): string {
  const { design, judged, plan } = net
  const ways = design.map((circuit) => layWords(circuit, country, say))
  const lines =
    ways.length === 1
      ? ways[0]!.replace(/^./, (first) => first.toUpperCase())
      : `${formatCount(ways.length, 'circuit')} of their own: ${ways.join('; ')}`
  const calling = [...new Set(judged.calling.map((each) => callingSentence(each, say)))]
  const idOf = (place: number) => country.shelf.places[place]!.id
  const silent = judged.silent
    .slice(0, NAMED)
    .map(([a, b]) => `${say.name(idOf(a))} and ${say.name(idOf(b))}`)
  const isTold = judged.calling.every(({ how }) => how === 'agree' || how === 'none')
  return [
    `${lines}.`,
    ...supplySentences(design, country, say),
    ...earthSentences(net, country, say),
    ...calling,
    ...(isMixed(design, country) ? ['Cranks on one side of the unit ring each other there.'] : []),
    ...(silent.length > 0 && !isTold ? [`${silent.join('; ')} cannot ring each other.`] : []),
    spareSentence({ judged }, say),
    ...(plan.allowances.reservePct === 0 ? ['The shelf has no wire to spare as a reserve.'] : []),
  ].join(' ')
}

/** What an earth return asks for, and what becomes of it in dry soil; nothing where there is none. */
function earthSentences(
  { earthed, taken, inDrySoil }: PlannedNet,
  country: Country,
  say: Tongue,
): readonly string[] {
  if (earthed === 0 || !inDrySoil) return []
  const used = country.rods.filter((_, k) => taken.rods[k]! > 0)
  const rods = formatCount(
    taken.rods.reduce((a, b) => a + b, 0),
    'earth rod',
  )
  const each = formatList(used.map(({ ohms, mostOhms }) => rodOhmsWords(ohms, mostOhms, say)))
  const { verdict, worst } = inDrySoil
  return [
    `One wire and the earth: ${rods}, one at either end of each line, in ${soilOf(country.shelf).name.toLowerCase()}; each ${each}.`,
    `With the soil at its driest ${THEN[verdict]}${verdict === 'fails' ? '' : AT_WORST[worst]}: measure the rods before you trust it.`,
    'Earth return hums, is heard on other lines in the ground, and draws lightning: a pair is better.',
  ]
}

function rodOhmsWords(ohms: number, mostOhms: number, { quantity }: Tongue): string {
  const usual = quantity(ohms, 'ohm')
  return mostOhms > ohms ? `${usual}, up to ${quantity(mostOhms, 'ohm')} when dry` : usual
}

/** Whether a unit that rings when somebody lifts has several cranks on its circuit, which ring beside it. */
const isMixed = (design: PlannedNet['design'], country: Country): boolean =>
  design.some(
    ({ supply, sets }) =>
      supply &&
      country.supplies[supply.kind]!.supply.kind === 'ringdown' &&
      [...sets.values()].filter((set) => country.sets[set]!.set.generator).length > 1,
  )

/** A few words to know a net by: `Cranks, a chain`. */
export function netTitle({ design, judged, earthed }: PlannedNet, country: Country, say: Tongue): string {
  const called = [
    ...new Set(
      design.map(({ supply }, k) => {
        const name =
          supply &&
          `${say.name(country.supplies[supply.kind]!.supply.id)} at ${say.name(country.shelf.places[supply.at]!.id)}`
        const how = judged.calling[k]?.how
        if (how === 'crank' && !name) return 'Cranks'
        return name ?? 'No bell'
      }),
    ),
  ]
  const [first] = design
  const shape = SHAPE_TITLES[shapeOf(first!.edges.map(({ edge }) => edge))]
  const lie = design.length > 1 ? formatCount(design.length, 'circuit') : shape
  const joint = design.some((each) => jointsOf(each).length > 0) ? ' joined in the open' : ''
  const earth = earthed > 0 ? ', earth return' : ''
  return `${formatList(called)}${lie && `, ${lie}`}${joint}${earth}`
}

const SHAPE_TITLES: Readonly<Record<Shape, string>> = {
  pair: '',
  chain: 'in a chain',
  star: 'in a star',
  tree: 'in a tree',
  ring: 'in a ring',
}

/** `Ringdown unit, 48 V, at Camp.`: what feeds each circuit, and where it stands. */
const supplySentences = (design: PlannedNet['design'], country: Country, say: Tongue): readonly string[] =>
  design.flatMap(({ supply }) =>
    supply
      ? [
          `${say.name(country.supplies[supply.kind]!.supply.id)}, at ${say.name(country.shelf.places[supply.at]!.id)}.`,
        ]
      : [],
  )

/** What a net has to spare at worst, and what that hangs on. */
function spareSentence({ judged }: Pick<PlannedNet, 'judged'>, { name }: Tongue): string {
  const { verdict, worst, check, worstNepers } = judged
  const about = check ? checkWords(check, name) : ''
  if (verdict === 'fails') return about ? `It fails today: ${about}.` : 'It fails today.'
  if (worst === 'fails')
    return `${verdict === 'thin' ? 'It barely works today' : 'It works today'}; in the worst weather ${about} fails.`
  const sparePct = Math.round(100 * (Math.exp(worstNepers) - 1))
  const holds = worst === 'thin' ? 'It barely holds in the worst weather' : 'It holds in the worst weather'
  if (!about) return `${holds}.`
  return sparePct >= 1000
    ? `${holds}, with many times what it needs.`
    : `${holds}: ${about} has ${sparePct} % to spare.`
}

const CELL_NAMES = new Map(CELL_MASSES.map(({ id, name }) => [id, name]))

/** `one more length of 400 m of WD-1A`: one thing more. */
function thingWords(thing: Thing, { have }: Shelf, say: Tongue): string {
  if (thing.kind === 'wire') return `one more length of ${say.length(thing.lengthM)} of ${say.name(thing.id)}`
  const list = { set: have.sets, supply: have.supplies, cell: have.cells }[thing.kind]
  const name = thing.kind === 'cell' ? isolated(CELL_NAMES.get(thing.id) ?? thing.id) : say.name(thing.id)
  return list.some(({ id, count }) => id === thing.id && count > 0)
    ? `one more “${name}”`
    : `“${name}” besides`
}

const THEN: Readonly<Record<Verdict, string>> = {
  works: 'it works',
  thin: 'it barely works',
  fails: 'it fails',
}
const AT_WORST: Readonly<Record<Verdict, string>> = {
  works: ', in the worst weather too',
  thin: ', and barely holds in the worst weather',
  fails: ', though not in the worst weather',
}

/** What a shelf lacks, each in one sentence. */
export function wantSentence(want: Want, shelf: Shelf, say: Tongue): string {
  switch (want.code) {
    case 'sets':
      return want.count === 1 ? 'One more telephone.' : `${want.count} more telephones.`
    case 'wire': {
      const long = say.lengthUp(want.lengthM)
      return want.wire === null ? `${long} of wire.` : `${long} more of ${say.name(want.wire)}.`
    }
    case 'lacks':
      return lackSentence(want.lack, say)
    case 'check':
      return `Nothing that can be made of this is enough for ${checkWords(want.check, say.name)}.`
    case 'cannot-speak':
      return 'Not all who must talk can: a battery in one leg serves only calls with the telephone at it.'
    case 'thing':
      return `With ${thingWords(want.thing, shelf, say)} ${THEN[want.verdict]}${AT_WORST[want.worst]}.`
  }
}

/** What one thing more would bring to a net that works already. */
export function gainSentence({ thing, net }: Gain, best: PlannedNet, shelf: Shelf, say: Tongue): string {
  const { verdict, worst, silent } = net.judged
  const before = best.judged
  const then = `${THEN[verdict]}${AT_WORST[worst]}`
  const mended =
    before.check && (before.verdict !== verdict || before.worst !== worst)
      ? `, where now ${checkWords(before.check, say.name)} ${before.worst === 'fails' ? 'fails' : 'has little to spare'}`
      : ''
  const calls = silent.length < before.silent.length ? ', and more of them can call each other' : ''
  return `With ${thingWords(thing, shelf, say)} ${then}${mended}${calls}.`
}

/** How sure it is that none is better. */
export function searchSentence({ search, nets, country }: ShelfAnswer, say: Tongue): string {
  const { isWhole, isBest, judged, leastWireM } = search
  if (nets.length === 0 && isWhole) return 'No net can be put together of this.'
  if (isWhole) return 'Every net that can be made of this was looked at: none is better than the first.'
  const seen = `${formatCount(judged, 'circuit')} between ${formatCount(country.shelf.places.length, 'place')} were judged, not every one that there is.`
  const [best] = nets
  if (!best) return judged > 0 ? seen : 'No net could be put together.'
  if (isBest) return `${seen} None can stand better than the first, or take less wire.`
  if (Math.round(best.wireM) === Math.round(leastWireM))
    return `${seen} None can do with less wire than the first; another might have more to spare.`
  const least = say.length(Math.floor(leastWireM))
  return `${seen} The first may not be the best: it takes ${say.length(best.wireM)} of wire, and none can do with less than ${least}.`
}
