import { describe, expect, test } from 'vitest'
import type { CircuitId, HazardId, LineId, StationId } from '../../src/plan/id'
import { EMPTY_PLAN, type Plan } from '../../src/plan/plan'
import { tongueOf } from '../../src/words/tongue'

const station = (id: string, name: string) => ({
  id: id as StationId,
  name,
  note: '',
  position: [10, 50] as const,
})
const plan: Plan = {
  ...EMPTY_PLAN,
  stations: new Map([station('s1', 'Camp'), station('s2', '')].map((each) => [each.id, each])),
  lines: new Map([
    [
      'l1' as LineId,
      {
        ...{ id: 'l1' as LineId, from: 's1' as StationId, to: 's2' as StationId, bends: [] },
        ...{ legs: [{ lay: 'surface' as const }], wire: 'none', pairs: 1, return: 'pair' as const },
      },
    ],
  ]),
  circuits: new Map([
    ['c1' as CircuitId, { id: 'c1' as CircuitId, name: 'Command', lines: [], sets: new Map(), supply: null }],
  ]),
  hazards: new Map([
    [
      'h1' as HazardId,
      {
        ...{ id: 'h1' as HazardId, hazard: 'road' as const, name: 'County road' },
        geometry: { type: 'LineString' as const, coordinates: [] },
      },
    ],
  ]),
}

// NIST Special Publication 811 (2008), appendix B.8: foot 0.3048 m, inch 25.4 mm, pound 0.45359237 kg, pound-force 4.4482216 N.
describe('a tongue', () => {
  const [metric, us] = [tongueOf(plan, 'metric'), tongueOf(plan, 'us')]

  test('says every figure in one person’s units', () => {
    expect([metric.length(318), us.length(318)]).toEqual(['318 m', '1043 ft'])
    expect([metric.height(5.4864), us.height(5.4864)]).toEqual(['5.5 m', '18 ft'])
    expect([metric.lengthUp(318.2), us.lengthUp(318.2)]).toEqual(['319 m', '1044 ft'])
    expect([metric.heightUp(6.0960001), us.heightUp(6.096)]).toEqual(['6.1 m', '20 ft'])
    expect([metric.depth(0.3), us.depth(0.3)]).toEqual(['30 cm', '12 in'])
    expect([metric.run(6840), us.run(6840)]).toEqual(['6.84 km', '4.25 mi'])
    expect([metric.mass(13.5), us.mass(13.5)]).toEqual(['13.5 kg', '29.8 lb'])
    expect([metric.force(756.2), us.force(756.2)]).toEqual(['756 N', '170 lbf'])
    expect([metric.temp(20), us.temp(20)]).toEqual(['20 °C', '68 °F'])
    expect([metric.tempStep(10), us.tempStep(10)]).toEqual(['10 °C', '18 °F'])
    expect([metric.range(0.15, 0.3, 'depthM'), us.range(0.15, 0.3, 'depthM')]).toEqual([
      '15 to 30 cm',
      '6 to 12 in',
    ])
    expect([metric.quantity(37.5, 'ohmPerKm'), us.quantity(10, 'ohmPerKm')]).toEqual([
      '37.5 Ω/km',
      '16.0934 Ω/mi',
    ])
  })

  test('names what the plan and the catalog name, and falls back on the id', () => {
    expect(['s1', 's2', 'l1', 'c1', 'h1', 'nothing'].map(metric.name)).toEqual([
      'Camp',
      's2',
      'Camp – s2',
      'Command',
      'County road',
      'nothing',
    ])
  })
})

test('a handbook’s figure is told in the units it is read in', () => {
  // US Army Signal subcourse SS0440, p. 1-25: 18 ft over a primary road; California GO 95, rule 113.4: 170 lb.
  const [metric, us] = [tongueOf(plan, 'metric'), tongueOf(plan, 'us')]
  expect([metric.height(18 * 0.3048), us.height(18 * 0.3048)]).toEqual(['5.5 m', '18 ft'])
  expect([metric.force(756), us.force(756)]).toEqual(['756 N', '170 lbf'])
})
