import { expect, test } from 'vitest'
import { shelfOf } from '../../src/files/parse-shelf'
import { SHELF_JOBS, type ShelfNews } from '../../src/jobs/shelf-answers'
import type { HazardId } from '../../src/plan/id'
import { DEFAULT_ROUTE_WEIGHTS } from '../../src/route/route-weights'

const read = (value: unknown) => {
  const shelf = shelfOf(value)
  if (!shelf.ok) throw new Error(JSON.stringify(shelf.problems))
  return shelf.value
}

const TWO = {
  places: [
    { id: 'camp', name: 'Camp', lon: 9, lat: 47 },
    { id: 'ford', name: 'Ford', lon: 9.01, lat: 47 },
  ],
  have: { wires: [{ wire: 'wd-1a', lengthM: 4000, count: 2 }], sets: [{ set: 'crank-1600', count: 2 }] },
}

const ask = (going: Parameters<typeof SHELF_JOBS.nets>[0]['going']) => {
  const news: ShelfNews[] = []
  const tell = { part: (part: ShelfNews) => void news.push(part), handOver: () => {} }
  const answer = SHELF_JOBS.nets({ shelf: read(TWO), system: 'metric', going }, tell)
  return { answer, news }
}

test('a net is told as soon as one is found, and its way goes round what must be gone round', () => {
  const straight = ask(null)
  expect(straight.news[0]).toMatchObject({ kind: 'so-far' })
  expect(straight.answer.nets[0]).toMatchObject({ verdict: 'works', title: 'Cranks' })
  const area = [
    [9.004, 46.9985],
    [9.006, 46.9985],
    [9.006, 47.0015],
    [9.004, 47.0015],
    [9.004, 46.9985],
  ] as const
  const keepOut = {
    id: 'h' as HazardId,
    hazard: 'keep-out' as const,
    name: '',
    note: '',
    geometry: { type: 'Polygon' as const, coordinates: [area] },
  }
  const round = ask({ hazards: [keepOut as never], weights: DEFAULT_ROUTE_WEIGHTS })
  expect(round.answer.nets[0]!.wireM).toBeGreaterThan(straight.answer.nets[0]!.wireM * 1.02)
  const [line] = round.answer.nets[0]!.plan.lines.values()
  expect(line!.bends.length).toBeGreaterThan(0)
})

test('what a net takes besides its wire is told net by net', () => {
  const { answer } = ask(null)
  const news: ShelfNews[] = []
  SHELF_JOBS.burdens(
    { plans: answer.nets.map(({ plan }) => plan) },
    { part: (part) => void news.push(part), handOver: () => {} },
  )
  expect(news).toHaveLength(answer.nets.length)
  // Two crank sets of 4.14 kg with their cells, and spools of wire.
  expect(news[0]).toMatchObject({ kind: 'burden', net: 0, burden: { today: 1, worst: 1 } })
  expect(news[0]?.kind === 'burden' && news[0].burden.kg).toBeGreaterThan(8.28)
})
