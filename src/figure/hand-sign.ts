/** Shapes that are told apart without colour, about the middle of a square of 14 steps. */
const SIGNS = [
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

/** The sign of a hand: the same for one name at every visit. */
export function handSign(name: string): string {
  let sum = 0
  for (const letter of name) sum = (sum * 31 + letter.charCodeAt(0)) % 9973
  return SIGNS[sum % SIGNS.length]!
}
