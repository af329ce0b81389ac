import type { Odds, Share, Tip } from '../budget/odds'
import { figureName } from './figure-names'
import type { Tongue } from './tongue'
import { formatList } from './units'

/** `Today all of 2,000 such circuits work (at least 99 in 100); in the worst weather 79 of 100 (77 to 82).` Never surer than the samples. */
export const oddsSentence = ({ samples, today, worst }: Odds): string =>
  `Today ${shareWords(today, samples, ' such circuits work')}; in the worst weather ${shareWords(worst, samples, '')}.`

function shareWords({ works, low, high }: Share, samples: number, what: string): string {
  const [least, most] = [Math.floor(low * 100), Math.ceil(high * 100)]
  const tried = samples.toLocaleString('en-US')
  if (works === 1) return `all of ${tried}${what} (at least ${least} in 100)`
  if (works === 0) return `none of ${tried}${what} (at most ${most} in 100)`
  return `${hundredths(works)} of 100${what} (${least} to ${most})`
}

/** A whole number of a hundred; never 0 or 100 where it is only nearly so. */
function hundredths(share: number): string {
  const whole = Math.round(share * 100)
  if (whole === 100 && share < 1) return 'over 99'
  if (whole === 0 && share > 0) return 'under 1'
  return String(whole)
}

/** A hundred such circuits: how many work in the worst weather too, how many today only, how many not at all. Never all or none where it is only nearly so. */
export interface Hundred {
  readonly always: number
  readonly today: number
  readonly never: number
}

export function hundredOf({ today, worst }: Odds): Hundred {
  const count = (share: number) =>
    share === 0 || share === 1 ? share * 100 : Math.min(99, Math.max(1, Math.round(share * 100)))
  const works = count(today.works)
  const always = Math.min(works, count(worst.works))
  return { always, today: works - always, never: 100 - works }
}

/** What a drawing of a hundred circuits shows, for those who do not see it. */
export const hundredWords = ({ always, today, never }: Hundred): string =>
  `Of a hundred such circuits ${always} work in any weather, ${today} only today, ${never} fail.`

const PARTS = [
  [0.85, 'nearly all'],
  [0.58, 'two thirds'],
  [0.42, 'half'],
  [0.29, 'a third'],
  [0.2, 'a quarter'],
] as const

/** A figure on which less than this share of the doubt hangs is not worth a person's way. */
const WORTH = 0.2

/** The same figure at several stations: measuring it at all of them settles this share. */
export interface TipGroup {
  readonly what: string
  readonly entry: string
  /** Stations of the sets or of the supply; none for a lot of wire. */
  readonly at: readonly string[]
  readonly share: number
}

/** Tips by the figure that is to be measured, the largest share first; those under a fifth are left out. */
export function tipGroups(tips: readonly Tip[]): readonly TipGroup[] {
  const groups = new Map<string, TipGroup>()
  for (const { what, entry, at, share } of tips) {
    const key = `${what} ${entry}`
    const before = groups.get(key) ?? { what, entry, at: [], share: 0 }
    groups.set(key, {
      ...before,
      at: at === undefined ? before.at : [...before.at, at],
      share: before.share + share,
    })
  }
  return [...groups.values()].filter(({ share }) => share >= WORTH).sort((a, b) => b.share - a.share)
}

/** `Measure the volts that just ring the bell at Ford: on it hangs two thirds of the doubt.` @param nameOfEntry id of a wire, set or supply → its name */
export function tipSentence(
  { what, entry, at, share }: TipGroup,
  nameOfEntry: (id: string) => string,
  { name }: Tongue,
): string {
  const part = PARTS.find(([least]) => share >= least)?.[1] ?? 'part'
  const where = at.length === 0 ? `of ${nameOfEntry(entry)}` : `at ${formatList(at.map(name), 5)}`
  return `Measure ${figureName(what)} ${where}: on ${at.length > 1 ? 'them' : 'it'} hangs ${part} of the doubt.`
}

/** Where no figure by itself is worth measuring. */
export const NO_TIP = 'No one figure decides it: the doubt is spread over many.'
