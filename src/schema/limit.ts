/** The range of one figure of a plan, both ends included, and the words that name it to a person. */
export interface Limit<U extends string = string> {
  readonly what: string
  readonly min: number
  readonly max: number
  readonly unit: U
  readonly whole?: true
  /** `min` itself is out. */
  readonly above?: true
  /** 0 is a figure too, though the least that is something is `min`. */
  readonly orZero?: true
}

const isFigure = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value)

/** The sentence that refuses a value, or undefined where it is within the limit. */
export function limitFault(limit: Limit, value: unknown): string | undefined {
  const { min, max, whole, above, orZero } = limit
  if (isFigure(value)) {
    if (orZero && value === 0) return undefined
    const within = value <= max && (above ? value > min : value >= min)
    if (within && (!whole || Number.isInteger(value))) return undefined
  }
  return `${limit.what} is ${valueWords(value)}: give ${limitWords(limit)}.`
}

function limitWords({ min, max, unit, whole, above, orZero }: Limit): string {
  const number = whole ? 'a whole number' : 'a number'
  const [least, most] = [numberWords(min), numberWords(max)]
  const range = above ? `above ${least} and up to ${most}` : `from ${least} to ${most}`
  return `${orZero ? '0, or ' : ''}${number} ${range}${unit && ` ${unit}`}`
}

/** A number as people read it: with a true minus, and thousands apart. */
export const numberWords = (value: number): string =>
  value.toLocaleString('en-US', { maximumFractionDigits: 6 }).replace('-', '−')

/** A value as a sentence can carry it: short, and told from its like (`"20"` is not 20). */
export function valueWords(value: unknown): string {
  if (value === undefined) return 'missing'
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : 'a list'
  if (typeof value === 'object' && value !== null) return 'an object'
  if (typeof value !== 'string') return String(value)
  return JSON.stringify(value.length > 40 ? `${value.slice(0, 40)}…` : value)
}
