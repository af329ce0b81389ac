import type { NetHours } from '../materials/hours'
import type { Loads } from '../materials/loads'
import { formatMassKg, type UnitSystem } from './units'

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten']
const inWords = (count: number): string => NUMBERS[count] ?? String(count)
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
const plural = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`

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
  system: UnitSystem,
): string =>
  `${formatMassKg(totalKg, system)} in all: ${plural(personLoads, 'load')} of at most ` +
  `${formatMassKg(perPersonKg, system)}, ${plural(trips, 'trip')} for ${people} ${people === 1 ? 'person' : 'people'}.`

/** What nobody may carry alone: `One-mile reel: 24.1 kg, two people carry it`. */
export const sharedWords = ({ shared }: Loads, system: UnitSystem): readonly string[] =>
  shared.map(
    ({ what, eachKg, people }) =>
      `${what}: ${formatMassKg(eachKg, system)}, ${inWords(people)} people carry it`,
  )
