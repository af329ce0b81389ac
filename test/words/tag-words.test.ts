import { expect, test } from 'vitest'
import type { TagReason } from '../../src/measure/line-tags'
import { tagReason, tagReasons } from '../../src/words/tag-words'
import { tongueOf } from '../../src/words/tongue'
import { HUT, SMALL_PLAN } from '../panel/small-plan'

const say = tongueOf(SMALL_PLAN, 'metric')

test.each<readonly [TagReason, string]>([
  [{ code: 'end', station: HUT, branches: false }, 'Hut'],
  [{ code: 'end', station: HUT, branches: true }, 'Hut, lines branch'],
  [{ code: 'lay-changes', from: 'surface', to: 'water' }, 'surface to under water'],
  [{ code: 'crossing', hazard: 'power-line', name: '' }, 'power line'],
  [{ code: 'crossing', hazard: 'road', name: 'County road' }, 'road: County road'],
  [{ code: 'test-point' }, 'test point'],
  [{ code: 'on-the-way' }, 'on the way'],
])('%o is said', (reason, words) => {
  expect(tagReason(reason, say)).toBe(words)
})

test('several reasons stand in one phrase', () => {
  expect(tagReasons([{ code: 'test-point' }, { code: 'crossing', hazard: 'track', name: '' }], say)).toBe(
    'test point, track',
  )
})
