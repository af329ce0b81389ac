import { CELL_MASSES } from '../catalog/built-in'
import { spoolOf } from '../catalog/spools'
import type { NetHours } from '../materials/hours'
import type { Loads, LoadThing } from '../materials/loads'
import type { Tongue } from './tongue'
import { formatCount } from './units'

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten']
const inWords = (count: number): string => NUMBERS[count] ?? String(count)
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** `5 h 10 min`, `40 min`: to five minutes from an hour on, as no rate tells more. */
export function formatHours(hours: number): string {
  if (hours <= 0) return '0 min'
  const step = hours < 1 ? 1 : 5
  const minutes = Math.max(1, Math.round((hours * 60) / step) * step)
  const [whole, rest] = [Math.floor(minutes / 60), minutes % 60]
  return [...(whole > 0 ? [`${whole} h`] : []), ...(rest > 0 ? [`${rest} min`] : [])].join(' ')
}

/** `Two crews of four lay it in 5 h 10 min by day; recovery 3 h.` */
export function hoursSentence({ crews, crew, isNight, totalH, recoveryH }: NetHours): string {
  const who = `${capital(inWords(crews))} ${crews === 1 ? 'crew' : 'crews'} of ${inWords(crew)}`
  const lay = crews === 1 ? 'lays' : 'lay'
  const when = isNight ? 'by night' : 'by day'
  return `${who} ${lay} it in ${formatHours(totalH)} ${when}; recovery ${formatHours(recoveryH)}.`
}

/** What a crew that is too small costs; empty where it is large enough. */
export const smallCrewSentence = ({ crew, crewWanted }: NetHours): string =>
  crew < crewWanted
    ? `Some of it takes a crew of ${inWords(crewWanted)}: with ${inWords(crew)} it goes slower in proportion.`
    : ''

/** `212.4 kg in all: 10 loads of at most 22.0 kg, 3 trips for 4 people.` */
export const loadsSentence = (
  { totalKg, personLoads, perPersonKg, trips, people }: Loads,
  { mass }: Tongue,
): string =>
  `${mass(totalKg)} in all: ${formatCount(personLoads, 'load')} of at most ` +
  `${mass(perPersonKg)}, ${formatCount(trips, 'trip')} for ${people} ${people === 1 ? 'person' : 'people'}.`

/** The same as the crews are packed: `212.4 kg in all, in loads of at most 22.0 kg: crew 1 goes 3 times, crew 2 twice.` */
export function loadedSentence(
  crews: readonly { readonly trips: number }[],
  perPersonKg: number,
  totalKg: number,
  { mass }: Tongue,
): string {
  const times = (trips: number) => (trips === 1 ? 'once' : trips === 2 ? 'twice' : `${trips} times`)
  const going = crews.map(({ trips }, crew) => `crew ${crew + 1} goes ${times(trips)}`)
  return `${mass(totalKg)} in all, in loads of at most ${mass(perPersonKg)}: ${going.join(', ')}. What is spare says so.`
}

/** What nobody may carry alone: `One-mile reel: 24.1 kg, two people carry it`. */
export const sharedWords = ({ shared }: Loads, say: Tongue): readonly string[] =>
  shared.map(
    ({ thing, eachKg, people }) =>
      `${loadWords(thing, say)}: ${say.mass(eachKg)}, ${inWords(people)} people carry it`,
  )

type LoadKind = LoadThing['kind']
const LOADS: {
  readonly [K in LoadKind]: (thing: Extract<LoadThing, { readonly kind: K }>, say: Tongue) => string
} = {
  spool: ({ wire, lengthM }, { length, name }) =>
    `${spoolOf(wire, lengthM)?.name ?? 'Spool'}, ${length(lengthM)} of ${name(wire)}`,
  set: ({ set }, { name }) => name(set),
  supply: ({ supply }, { name }) => name(supply),
  cell: ({ cell }) => CELL_MASSES.find(({ id }) => id === cell)?.name ?? 'Dry cell',
  tag: () => 'Tag',
  rod: () => 'Ground rod',
  lance: () => 'Lance pole',
  guy: () => 'Guy',
  stake: () => 'Stake',
  weight: () => 'Weight for wire in water',
  tools: () => 'Tools of a crew: pliers, knife, tape, climbers',
  'test-set': () => 'Test set of a crew',
}

/** One thing on the load list: `One-mile reel, 5280 ft of Field wire`. */
export const loadWords = (thing: LoadThing, say: Tongue): string =>
  (LOADS[thing.kind] as (thing: LoadThing, say: Tongue) => string)(thing, say)
