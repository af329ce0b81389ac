import type { Reach } from '../report/report'
import { checkWords } from './check-words'

type NameOf = (stationId: string) => string

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
