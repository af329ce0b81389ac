/** How one hand is marked, on the map, in the panel and in the log. */
export interface HandSign {
  /** The shape, about the middle of a square of 14 steps. */
  readonly path: string
  /** Which of the tones for hands it has: it only repeats the shape, and is not seen by night. */
  readonly tone: number
  /** Stand in the shape where there are more hands than shapes; empty before that. */
  readonly letters: string
}

/** Told apart without colour. */
const SHAPES = [
  'M-5.5 0a5.5 5.5 0 1 0 11 0a5.5 5.5 0 1 0 -11 0z',
  'M0 -6l6 10.5h-12z',
  'M-5 -5h10v10h-10z',
  'M0 -6.5l6.5 6.5l-6.5 6.5l-6.5 -6.5z',
  'M-2 -6h4v4h4v4h-4v4h-4v-4h-4v-4h4z',
  'M0 6l6 -10.5h-12z',
  'M-6 -6l12 12M6 -6l-12 12M-6 -6v0',
  'M-3 -5.5h6l3 5.5l-3 5.5h-6l-3 -5.5z',
  'M-6 3a6 6 0 0 1 12 0z',
  'M-6 -4h12v3h-4.5v6h-3v-6h-4.5z',
] as const
/** Wide enough for letters: a circle, a square and a shield. */
const WIDE = [
  'M-7 0a7 7 0 1 0 14 0a7 7 0 1 0 -14 0z',
  'M-6.5 -6.5h13v13h-13z',
  'M-6.5 -6.5h13v8l-6.5 5.5l-6.5 -5.5z',
] as const
export const HAND_TONES = 5

const hashOf = (name: string): number => {
  let sum = 0
  for (const letter of name) sum = (sum * 31 + letter.charCodeAt(0)) % 9973
  return sum
}

const lettered = (name: string, at: number): HandSign => ({
  path: WIDE[at % WIDE.length]!,
  tone: at % HAND_TONES,
  letters: initialsOf(name),
})

/**
 * A sign for each name: screens that know the same names show the same signs, and nobody's is another's as long as there are shapes for
 * all; then letters of the name stand in it.
 */
export function handSigns(names: Iterable<string>): ReadonlyMap<string, HandSign> {
  const order = [...new Set(names)].map((name) => [hashOf(name), name] as const)
  order.sort(([a, first], [b, second]) => a - b || (first < second ? -1 : 1))
  const signs = new Map<string, HandSign>()
  const [taken, takenWide] = [new Set<number>(), new Set<number>()]
  for (const [hash, name] of order) {
    const shape = freePlace(hash, SHAPES.length, taken)
    signs.set(
      name,
      shape === undefined
        ? lettered(name, freePlace(hash, WIDE.length * HAND_TONES, takenWide) ?? hash)
        : { path: SHAPES[shape]!, tone: shape % HAND_TONES, letters: '' },
    )
  }
  return signs
}

const known = new WeakMap<readonly string[], ReadonlyMap<string, HandSign>>()

/** The sign of one hand among those that a plan knows. */
export function signOfHand(names: readonly string[], name: string): HandSign {
  const signs = known.get(names) ?? handSigns(names)
  known.set(names, signs)
  return signs.get(name) ?? lettered(name, hashOf(name))
}

function freePlace(hash: number, count: number, taken: Set<number>): number | undefined {
  if (taken.size === count) return undefined
  let at = hash % count
  while (taken.has(at)) at = (at + 1) % count
  taken.add(at)
  return at
}

/** `Line crew 12` is L12, `Ada Byron` AB. */
function initialsOf(name: string): string {
  const words = name.replace(/[()]/g, '').split(/\s+/).filter(Boolean)
  const [first = '?', last = ''] = [words[0], words.length > 1 ? words.at(-1) : '']
  const second = /^\d+$/.test(last) ? last.slice(-2) : ([...last][0] ?? '')
  return `${[...first][0]}${second}`.toLocaleUpperCase()
}
