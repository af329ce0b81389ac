import type { WorstBecause, WorstPart } from '../budget/worst-parts'
import { checkWords } from './check-words'
import type { Tongue } from './tongue'

/** One part of the worst weather: `wet`, `at 50 °C`, `with the battery spent`. */
export function partWords(part: WorstPart, wireTempC: number, { temp }: Tongue): string {
  switch (part) {
    case 'wet':
      return 'wet'
    case 'dry':
      return 'dry'
    case 'hot':
    case 'cold':
      return `at ${temp(wireTempC)}`
    case 'battery':
      return 'with the battery spent'
    case 'ringing':
      return 'with weak ringing'
  }
}

/** `wet, at 50 °C, with the battery spent: the current at Sheepfold`: what it takes, and what then has least to spare. */
export function becauseWords(
  { parts, check }: WorstBecause,
  { wireTempC }: { readonly wireTempC: number },
  say: Tongue,
): string {
  const list = parts.map((part) => partWords(part, wireTempC, say))
  const under = list.length === 0 ? 'as it is today' : list.join(', ')
  return check ? `${under}: ${checkWords(check, say.name)}` : under
}
