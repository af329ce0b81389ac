/** Of how many times the random cases each test that counts them itself tries: `CASES=4 npm test` looks longer. */
const MANY = Number(process.env.CASES ?? 1)

/** `ALL=1 npm test` tries every part of what is else tried part by part, another each day. */
export const ALL = Boolean(process.env.ALL)

const DAY_MS = 24 * 60 * 60 * 1000
/** `DAY=3 npm test` tries the parts of another day. */
const TODAY = Number(process.env.DAY ?? Math.floor(Date.now() / DAY_MS))

/** That many random cases, or as many times more as was asked for. */
export const cases = (count: number): number => Math.ceil(count * MANY)

/** Of a sweep too wide for every run, the part of today: one of so many, each of which is tried within as many days. */
export function todays<T>(all: readonly T[], parts: number): readonly T[] {
  const among = Math.min(parts, all.length)
  return ALL ? all : all.filter((_, index) => index % among === TODAY % among)
}

/** Whether a check that takes turns with others, by day, has its turn: one of so many parts. */
export const isTurn = (part: number, parts: number): boolean => ALL || TODAY % parts === part

/** The numbers of so many random cases, from nought, that are today's. */
export const todaysCases = (count: number, parts: number): readonly number[] =>
  todays(
    Array.from({ length: cases(count) }, (_, index) => index),
    parts,
  )
