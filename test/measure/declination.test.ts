import { describe, expect, test } from 'vitest'
import { declinationAt } from '../../src/measure/declination'

// NOAA/NCEI and BGS, The US/UK World Magnetic Model for 2025–2030 (2024), table of test values at 0 km, declination to 0.01°.
// Typed from memory.
const TEST_VALUES = [
  { day: '2025-01-01', latDeg: 80, lonDeg: 0, eastDeg: 1.28 },
  { day: '2025-01-01', latDeg: 0, lonDeg: 120, eastDeg: -0.16 },
  { day: '2025-01-01', latDeg: -80, lonDeg: -120, eastDeg: 68.78 },
  { day: '2027-07-02', latDeg: 80, lonDeg: 0, eastDeg: 2.59 },
  { day: '2027-07-02', latDeg: 0, lonDeg: 120, eastDeg: -0.24 },
  { day: '2027-07-02', latDeg: -80, lonDeg: -120, eastDeg: 68.49 },
]

describe('magnetic declination', () => {
  test.each(TEST_VALUES)(
    'on $day at $latDeg, $lonDeg is the published $eastDeg°',
    ({ day, latDeg, lonDeg, eastDeg }) => {
      const found = declinationAt([lonDeg, latDeg], day)
      if (!found.ok) throw new Error(found.problems[0]!.message)
      expect(found.value.model).toBe('WMM2025')
      // Half the last printed figure, and the half day by which noon differs from the table's midnight: at most 0.26°/year.
      expect(Math.abs(found.value.eastDeg - eastDeg)).toBeLessThan(0.0055)
    },
  )

  test('is told for a day within the model, and is a sentence beyond it', () => {
    expect(declinationAt([10, 55], '2026-11-25')).toMatchObject({ ok: true })
    expect(declinationAt([10, 55], '2040-01-01')).toMatchObject({
      ok: false,
      problems: [{ code: 'no-magnetic-model' }],
    })
    expect(declinationAt([10, 55], '1990-01-01')).toMatchObject({ ok: false })
    expect(declinationAt([10, 55], '')).toMatchObject({ ok: false, problems: [{ code: 'no-date' }] })
  })
})
