import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { HAND_TONES, handSigns, signOfHand } from '../../src/figure/hand-sign'

const names = (count: number) => Array.from({ length: count }, (_, i) => `Line crew ${i + 1}`)
const shown = (sign: object) => JSON.stringify(sign)

test('up to ten hands differ by shape alone, and screens that know the same names show the same signs', () => {
  for (const count of [2, 5, 10]) {
    const signs = handSigns(names(count))
    expect(new Set([...signs.values()].map(({ path }) => path)).size).toBe(count)
    expect(handSigns(names(count).reverse())).toEqual(signs)
    expect([...signs.values()].every(({ letters }) => letters === '')).toBe(true)
  }
})

test('more hands than shapes have letters of their names in them, and of fifty no two are alike', () => {
  const signs = handSigns(names(50))
  expect(new Set([...signs.values()].map(shown)).size).toBe(50)
  expect([...signs.values()].filter(({ letters }) => letters !== '')).toHaveLength(40)
  const wide = handSigns(['Ada Byron', 'שרה בן־דוד', 'Somebody (k3f2)', '', ...names(12)])
  for (const { letters } of wide.values()) expect([...letters].length).toBeLessThan(4)
})

test('a name that no list has gets a sign too, always the same', () => {
  expect(signOfHand([], 'Ada Byron')).toEqual(signOfHand([], 'Ada Byron'))
  expect(signOfHand([], 'Ada Byron').letters).toBe('AB')
})

/** Relative luminance and contrast of WCAG 2.2 (W3C, 2023), section "contrast ratio". */
const luminance = (hex: string): number => {
  const [r = 0, g = 0, b = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4))
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}
const contrast = (a: string, b: string): number => {
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x)
  return (light + 0.05) / (dark + 0.05)
}
const read = (path: string) => readFileSync(new URL(`../../src/${path}`, import.meta.url), 'utf8')

/** SC 1.4.11: 3 : 1 for what is needed to understand a graphic. */
test('every tone stands out 3 : 1 from the paper and the sheet, by day, in the dark and at night', () => {
  const look = read('look.css')
  const css = read('figure/hand-tones.css')
  const pairOf = (name: string) =>
    look.match(new RegExp(`--${name}: light-dark\\((#\\w{6}), (#\\w{6})\\)`))!.slice(1) as [string, string]
  const tones = [
    ...css.matchAll(/\.hand-tone-\d \{\s*color: (?:var\(--(\w+)\)|light-dark\((#\w{6}), (#\w{6})\))/g),
  ]
  expect(tones).toHaveLength(HAND_TONES)
  const pairs = tones.map(([, name, light, dark]) => (name ? pairOf(name) : [light!, dark!]))
  for (const ground of ['paper', 'sheet', 'shade'])
    for (const [at, tone] of pairs.entries())
      for (const theme of [0, 1])
        expect(contrast(tone[theme]!, pairOf(ground)[theme]!), `tone ${at} on ${ground}`).toBeGreaterThan(3)
  const night = look.slice(look.indexOf('[data-theme="night"]'))
  const atNight = (name: string) => night.match(new RegExp(`--${name}: (#\\w{6})`))![1]!
  for (const ground of ['paper', 'sheet'])
    expect(contrast(atNight('focus'), atNight(ground))).toBeGreaterThan(3)
})
