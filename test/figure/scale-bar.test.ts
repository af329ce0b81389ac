import { expect, test } from 'vitest'
import { scaleBar } from '../../src/figure/scale-bar'

test.each([
  [940, 'metric', '500 m', 500],
  [1000, 'metric', '1 km', 1000],
  [7000, 'metric', '5 km', 5000],
  // 1 mile is 1609.344 m and 1 foot 0.3048 m exactly (1959 agreement).
  [7000, 'us', '2 mi', 3218.688],
  [1000, 'us', '½ mi', 804.672],
  [700, 'us', '2000 ft', 609.6],
] as const)('where %d m fit, %s units show %s', (mostM, units, text, lengthM) => {
  const bar = scaleBar(mostM, units)
  expect(bar.text).toBe(text)
  expect(bar.lengthM).toBeCloseTo(lengthM, 9)
})
