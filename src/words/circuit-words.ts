import type { LoopRow, RingingRow, VoiceRow } from '../budget/rows'
import { judgeLoop, judgeRinging, judgeVoice } from '../budget/verdict'
import type { Reach } from '../report/report'
import { checkWords } from './choice-words'
import { formatDb, formatList, formatMA, formatVolts, plainNumber } from './units'

type NameOf = (stationId: string) => string

const worst = <T>(rows: readonly T[], shareOf: (row: T) => number): T | undefined =>
  rows.reduce<T | undefined>(
    (low, row) => (low === undefined || shareOf(row) < shareOf(low) ? row : low),
    undefined,
  )

const unique = (names: readonly string[]) => [...new Set(names)]

/** Will it ring? One sentence. */
export function ringingSentence(rows: readonly RingingRow[], nameOf: NameOf): string {
  const faintest = worst(rows, (row) => row.volts / row.minVolts)
  if (!faintest)
    return 'Nothing rings here: there is no hand generator and no source of ringing, or no bell to hear it.'
  const bell = `${formatVolts(faintest.volts)} and needs ${plainNumber(faintest.minVolts)} V`
  const failing = unique(rows.filter((row) => judgeRinging(row) === 'fails').map((row) => nameOf(row.to)))
  if (failing.length === 1) return `Not at ${failing[0]}: the bell gets ${bell}.`
  if (failing.length > 1)
    return `Not at ${formatList(failing)}: the faintest bell, at ${nameOf(faintest.to)}, gets ${bell}.`
  if (judgeRinging(faintest) === 'thin') return `Barely at ${nameOf(faintest.to)}: the bell gets ${bell}.`
  return `Yes. The faintest bell, at ${nameOf(faintest.to)}, gets ${bell}.`
}

/** Is there current enough? One sentence. */
export function loopSentence(rows: readonly LoopRow[], nameOf: NameOf): string {
  const weakest = worst(rows, (row) => row.mA / row.minMA)
  if (!weakest) return 'No two sets that need the battery can speak over it.'
  const [a, b] = weakest.call
  const set = `the set at ${nameOf(weakest.station)} gets ${formatMA(weakest.mA)} and needs ${plainNumber(weakest.minMA)} mA when ${nameOf(a)} speaks with ${nameOf(b)}`
  const verdict = judgeLoop(weakest)
  if (verdict === 'works') return `Yes. The weakest: ${set}.`
  return `${verdict === 'thin' ? 'Barely' : 'No'}: ${set}.`
}

/** Will it talk? One sentence. */
export function voiceSentence(rows: readonly VoiceRow[], nameOf: NameOf): string {
  const weakest = worst(rows, (row) => row.maxDb - row.lossDb)
  if (!weakest) return 'There are no two sets here to speak with each other.'
  const pair = `${nameOf(weakest.from)} to ${nameOf(weakest.to)}`
  const loss = `${formatDb(weakest.lossDb)} of loss, where ${plainNumber(weakest.maxDb)} dB is the most`
  const verdict = judgeVoice(weakest)
  if (verdict === 'works') return `Yes. The faintest pair is ${pair}: ${loss}.`
  return `${verdict === 'thin' ? 'Barely' : 'Not'} from ${pair}: ${loss}.`
}

/** How far could it go? One sentence. */
export function reachSentence(reach: Reach, nameOf: NameOf): string {
  const { factor, check } = reach
  if (!check) return 'The length of wire is not what limits it.'
  const what = checkWords(check, nameOf)
  if (factor === 0) return `Nowhere: ${what} fails with no wire at all.`
  if (factor < 0.5) return `As drawn it is ${(1 / factor).toFixed(1)} times as long as ${what} allows.`
  if (factor < 1) return `As drawn it is ${percent(1 / factor - 1)} too long for ${what}.`
  if (factor < 2) return `It could be ${percent(factor - 1)} longer before ${what} fails.`
  return `It would reach ${factor.toFixed(1)} times as far before ${what} fails.`
}

/** Never `0 %` of something that is there. */
const percent = (part: number) => `${part < 0.01 ? 'less than 1' : Math.round(part * 100)} %`
