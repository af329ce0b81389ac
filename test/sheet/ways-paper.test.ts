import { expect, test } from 'vitest'
import type { StationId } from '../../src/plan/id'
import { nearRoutes } from '../../src/route/near-routes'
import { waysMap } from '../../src/sheet/kinds/ways-map'
import { bodyOf, PAPER_SIZES } from '../../src/sheet/layout/paper-size'
import { demoPlan, sourceOf } from './demo-source'

test('ways of a line lie on their sheet with the ground in which they are found, all of them within it', () => {
  const plan = demoPlan()
  const [from, to] = ['camp', 'kiln'].map((id) => plan.stations.get(id as StationId)!.position)
  const hazards = [...plan.hazards.values()]
  const found = nearRoutes({ from: from!, to: to!, hazards, sharePct: 40, mostCells: 40_000, apartM: 100 })!
  if (!found.ok) throw new Error('no way')
  const { corridor, routes } = found.value
  expect(routes.length).toBeGreaterThan(1)
  const all = routes.map(({ bends }) => [from!, ...bends, to!])
  const sentences = ['The ground.', 'Way 1.', 'Way 2.']
  const room = bodyOf(PAPER_SIZES[0]!)
  const [map, ...words] = waysMap(sourceOf(plan), { title: 'Camp – Kiln', all, sentences, corridor }, room)
  if (map?.kind !== 'drawing' || map.drawing?.kind !== 'map') throw new Error('no map')
  const { ways, corridor: rings, labels, window } = map.drawing.drawing
  expect(ways).toHaveLength(routes.length)
  expect(rings.length).toBeGreaterThan(0)
  expect(labels.filter(({ style }) => style === 'far').map(({ label }) => label.text)).toContain('Way 1')
  const { left, right, top, bottom } = window.frame
  for (const [x, y] of [...ways, ...rings].flat()) {
    expect(x).toBeGreaterThanOrEqual(left - 0.01)
    expect(x).toBeLessThanOrEqual(right + 0.01)
    expect(y).toBeGreaterThanOrEqual(top - 0.01)
    expect(y).toBeLessThanOrEqual(bottom + 0.01)
  }
  expect(
    words.filter((block) => block.kind === 'text' && sentences.includes(block.text as string)),
  ).toHaveLength(3)
})
