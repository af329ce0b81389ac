import type { Odds, Share, Tip } from '../budget/odds'
import { figureName } from './figure-names'
import type { Tongue } from './tongue'

/** `97 of 100 such circuits work today (96 to 98), 79 (77 to 81) in the worst weather.` */
export function oddsSentence({ today, worst }: Odds): string {
  const share = ({ works, low, high }: Share, of: string) => {
    const [from, to] = [hundredths(low), hundredths(high)]
    return `${hundredths(works)}${of}${from === to ? '' : ` (${from} to ${to})`}`
  }
  return `Of 100 such circuits ${share(today, ' work today')}, and ${share(worst, ' in the worst weather')}.`
}

/** A whole number of a hundred; never 0 or 100 where it is only nearly so. */
function hundredths(share: number): string {
  const whole = Math.round(share * 100)
  if (whole === 100 && share < 1) return 'over 99'
  if (whole === 0 && share > 0) return 'under 1'
  return String(whole)
}

const PARTS = [
  [0.85, 'nearly all'],
  [0.6, 'two thirds'],
  [0.42, 'half'],
  [0.29, 'a third'],
  [0.2, 'a quarter'],
  [0, 'part'],
] as const

/** `Measure the least voltage of the bell at Ford: on it hangs two thirds of the doubt.` @param nameOfEntry id of a wire, set or supply → its name */
export function tipSentence(
  { what, entry, at, share }: Tip,
  nameOfEntry: (id: string) => string,
  { name }: Tongue,
): string {
  const part = PARTS.find(([least]) => share >= least)![1]
  const where = at === undefined ? `of ${nameOfEntry(entry)}` : `at ${name(at)}`
  return `Measure ${figureName(what)} ${where}: on it hangs ${part} of the doubt.`
}
