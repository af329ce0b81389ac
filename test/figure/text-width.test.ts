import { expect, test } from 'vitest'
import { cutToWidth, textWidthEm } from '../../src/figure/text-width'
import { isolated } from '../../src/isolated'

test('a text that is cut to a width has no more than that, and stays isolated', () => {
  const name = isolated('برج الماء عند النهر 14 Sheepfold'.repeat(20))
  const cut = cutToWidth(name, 12)
  expect(textWidthEm(cut)).toBeLessThanOrEqual(12)
  expect([cut[0], cut.at(-1)]).toEqual(['\u2068', '\u2069'])
  expect(cutToWidth('Mill', 12)).toBe('Mill')
})
