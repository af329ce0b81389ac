import { isUnfinished } from '../budget/circuit-notes'
import type { Odds } from '../budget/odds'
import type { ReportCircuit } from '../report/report'
import { checkWords } from './check-words'
import { oddsSentence } from './odds-words'
import type { Tongue } from './tongue'

/**
 * How a circuit stands, in one sentence that never says "works" alone: `works as planned; in the worst weather (wet, wire at 50 °C, weak battery
 * and bells) fails: it hangs on the bell at Weir.` The odds follow where they are known.
 */
export function verdictSentence(circuit: ReportCircuit, odds: Odds | undefined, say: Tongue): string {
  const { worst, missing } = circuit
  if (isUnfinished(missing)) return 'is not finished.'
  const word = circuit.verdict === 'thin' ? 'is thin' : circuit.verdict
  const hangs = worst.check ? `; it hangs on ${checkWords(worst.check, say.name)}` : ''
  const weather = `${worst.weather}, wire at ${say.temp(worst.wireTempC)}, supply and bells weak`
  const sure = odds ? ` ${oddsSentence(odds)}` : ''
  return `${word} as planned, ${worst.verdict} at worst (${weather})${hangs}.${sure}`
}

/** The same in as few words as tell it: `works; at worst fails (wet, 50 °C): the bell at Weir`. */
export function verdictInShort(circuit: ReportCircuit, odds: Odds | undefined, say: Tongue): string {
  const { verdict, worst, missing } = circuit
  if (isUnfinished(missing)) return 'not finished'
  const hangs = worst.check ? `: ${checkWords(worst.check, say.name)}` : ''
  return `${verdict}; at worst ${worst.verdict} (${worst.weather}, ${say.temp(worst.wireTempC)})${hangs}${odds ? `. ${oddsSentence(odds)}` : ''}`
}
