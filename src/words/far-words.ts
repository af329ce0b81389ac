import type { FarFound } from '../report/far-shades'
import type { FarLimit, FarStop } from '../report/further-set'
import { checkWords } from './check-words'
import { lackSentence } from './circuit-notes'
import type { Tongue } from './tongue'

/** What a shade stands for, in few words, in the order from the widest. */
export const FAR_WORDS: Readonly<Record<FarLimit, string>> = {
  today: 'today',
  worst: 'at worst',
  nine: '9 in 10 at worst',
  stock: 'the wire runs out',
}

export const FAR_LIMITS = Object.keys(FAR_WORDS) as readonly FarLimit[]

/** How a station is spoken of that has no place yet. */
export const FURTHER_NAME = 'the new telephone'

/** `today 3.21 km`: on the outline of a shade. */
export const farLabel = (limit: FarLimit, wireM: number, { run }: Tongue): string =>
  `${FAR_WORDS[limit]} ${run(wireM)}`

/** A telephone that cannot even be called from the very next table is told by what is lacking; else what fails first. */
function stopWords(stop: FarStop | undefined, atOnce: boolean, say: Tongue): string {
  if (!stop) return ''
  if (stop.kind === 'lack') return ` ${lackSentence(stop.lack, say)}`
  const what = checkWords(stop.check, say.name)
  return atOnce ? ` What fails is ${what}.` : ` Beyond that, ${what} is the first to fail.`
}

/** `In all: today 1.91 km of wire, at worst 867 m`. */
export function farInShort({ limitsM, isBarred }: FarFound, { run }: Tongue): string {
  if (isBarred) return 'No wire leads out of a keep-out area'
  const told = (['today', 'worst', 'nine', 'stock'] as const).flatMap((limit) => {
    const wireM = limitsM[limit]
    if (wireM === undefined || wireM === Number.POSITIVE_INFINITY) return []
    return [`${FAR_WORDS[limit]} ${wireM > 0 ? run(wireM) : 'none'}`]
  })
  return told.length > 0 ? `Wire of this line at the most: ${told.join(', ')}` : ''
}

/** How far it could go, sentence by sentence: `At worst 1,240 m of wire from Ford.` */
export function farSentences({ limitsM, stops, isBarred }: FarFound, from: string, say: Tongue): string[] {
  const sentence = (limit: 'today' | 'worst', when: string) => {
    const wireM = limitsM[limit]
    if (wireM === undefined) return []
    if (wireM === 0) return [`${when} not even beside ${from}.${stopWords(stops[limit], true, say)}`]
    if (wireM === Number.POSITIVE_INFINITY) return [`${when} more wire than a crew lays in a week.`]
    return [`${when} ${say.run(wireM)} of wire from ${from}.${stopWords(stops[limit], false, say)}`]
  }
  const { nine, stock, worst } = limitsM
  return [
    ...sentence('today', 'Today'),
    ...sentence('worst', 'At worst'),
    ...(nine !== undefined && worst !== 0
      ? [
          nine > 0
            ? `Of ten such circuits nine still work at worst up to ${nine === Number.POSITIVE_INFINITY ? 'any length' : say.run(nine)}.`
            : 'Of ten such circuits fewer than nine work at worst, even with hardly any more wire.',
        ]
      : []),
    ...(stock !== undefined && stock !== Number.POSITIVE_INFINITY
      ? [
          stock > 0
            ? `The stock has ${say.run(stock)} of this wire to spare for it.`
            : 'The stock has none of this wire to spare for it.',
        ]
      : []),
    ...(isBarred ? [`${from} stands inside a keep-out area, and no wire leads out of it.`] : []),
  ]
}
