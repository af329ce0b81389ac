import { expect, test } from 'vitest'
import { EMPTY_PLAN } from '../../src/plan/plan'
import { tongueOf } from '../../src/words/tongue'
import { workSource } from '../../src/words/work-field-words'

test('a rate is told with where it comes from, in the person’s units', () => {
  const [metric, us] = [tongueOf(EMPTY_PLAN, 'metric'), tongueOf(EMPTY_PLAN, 'us')]
  expect(workSource('surfaceKmPerHour', metric)).toMatch(/^On foot 2\.5 km\/h with 4: /)
  // 2.5 km/h is 1.55 mph: the mile is 1.609344 km (NIST Special Publication 811, appendix B.8).
  expect(workSource('surfaceKmPerHour', us)).toMatch(/^On foot 1\.55 mph with 4: /)
  expect(workSource('spliceMin', us)).toBe(workSource('spliceMin', metric))
  expect(workSource('crews', us)).toBe('')
})
