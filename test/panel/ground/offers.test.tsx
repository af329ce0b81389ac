// @vitest-environment page
import { act } from 'preact/test-utils'
import { describe, expect, test } from 'vitest'
import type { Position } from '../../../src/geo/position'
import { HazardImport } from '../../../src/panel/ground/hazard-import'
import { LineGround } from '../../../src/panel/ground/line-ground'
import { NetOffer } from '../../../src/panel/ground/net-offer'
import { OverheadFields } from '../../../src/panel/line/overhead-fields'
import type { StationId } from '../../../src/plan/id'
import { EMPTY_PLAN } from '../../../src/plan/plan'
import { bad, ok } from '../../../src/problem'
import type { GroundWorker } from '../../../src/state/ground-state'
import { createStore } from '../../../src/state/store'
import { cpuSeconds } from '../../cpu-seconds'
import { page } from '../page'
import { FORD, HUT, LINE, NET, SMALL_PLAN } from '../small-plan'

type Store = ReturnType<typeof createStore>
const line = (store: Store) => store.plan.value.lines.get(LINE)!
const measured = (store: Store) => store.report.value.lines.find(({ id }) => id === LINE)!
const settle = () => act(() => new Promise<void>((resolve) => setTimeout(resolve, 5)))

const BEND: Position = [11.002, 47.004]
const ROUTE = {
  bends: [BEND],
  lays: ['surface', 'buried'],
  mapM: 1150,
  cost: 1200,
  cellM: 5,
  apart: 1,
} as const
const AROUND: Position = [11.006, 47.006]
const OTHER = { ...ROUTE, bends: [AROUND], cost: 1300, apart: 0.8 } as const
const WAY = { corridor: [], routes: [ROUTE, OTHER], apartM: 50 } as const

function withGroundWorker(groundWorker: Partial<GroundWorker>) {
  const store = createStore(SMALL_PLAN)
  store.groundWorker.value = groundWorker as GroundWorker
  return store
}

describe('a suggested route', () => {
  const show = (groundWorker: Partial<GroundWorker>) => {
    const store = withGroundWorker(groundWorker)
    return { store, ...page(<LineGround store={store} line={line(store)} measured={measured(store)} />) }
  }

  test('stands beside the drawn one by its figures and on the map, and is taken as one step', async () => {
    const { store, press, all } = show({ nearRoutes: async () => ok(WAY) })
    press('Suggest a route')
    await settle()
    expect(all('.weighed thead th').map((cell) => cell.textContent)).toEqual(['Way', 'Drawn', '1', '2'])
    const rows = all('.weighed tbody th').map((cell) => cell.textContent)
    expect(rows).toEqual([
      ...['Along the ground', 'Wire', 'Climb', 'Bends', 'Cautions', 'Hours to lay'],
      ...['Dearer than way 1', 'Apart from the rest'],
    ])
    press('Way 2')
    expect(store.suggested.value).toEqual([[[11, 47], AROUND, [11, 47.01]]])
    expect(store.besideSuggested.value.ways).toEqual([[[11, 47], BEND, [11, 47.01]]])
    press('Way 1')
    expect(store.suggested.value).toEqual([[[11, 47], BEND, [11, 47.01]]])
    expect(line(store)).toBe(SMALL_PLAN.lines.get(LINE))
    press('Route the line this way')
    expect(line(store)).toMatchObject({ bends: [BEND], legs: [{ lay: 'surface' }, { lay: 'buried' }] })
    expect(store.suggested.value).toEqual([])
    store.undo()
    expect(store.plan.value).toBe(SMALL_PLAN)
  })

  test('that is left, or that the plan has outrun, goes from the map', async () => {
    const { store, press } = show({ nearRoutes: async () => ok(WAY) })
    press('Suggest a route')
    await settle()
    press('Leave it')
    expect(store.suggested.value).toEqual([])
    press('Suggest a route')
    await settle()
    expect(store.suggested.value).toHaveLength(1)
    act(() => store.edit((plan) => ({ ...plan, hazards: new Map() })))
    await settle()
    expect(store.suggested.value).toEqual([])
    expect(line(store)).toBe(SMALL_PLAN.lines.get(LINE))
  })

  test('that comes for another plan, or when another thing is selected, is dropped', async () => {
    let answer: (way: ReturnType<typeof ok<typeof WAY>>) => void = () => undefined
    const desk = {
      nearRoutes: () =>
        new Promise<ReturnType<typeof ok<typeof WAY>>>((resolve) => {
          answer = resolve
        }),
    }
    const { store, press } = show(desk)
    press('Suggest a route')
    expect(store.work.value?.words).toBe('Seeking a route')
    act(() => store.open({ ...SMALL_PLAN, stations: new Map(SMALL_PLAN.stations) }))
    expect(store.work.value).toBeNull()
    answer(ok(WAY))
    await settle()
    expect(store.suggested.value).toEqual([])

    const left = show(desk)
    left.press('Suggest a route')
    page(<p>another card</p>)
    answer(ok(WAY))
    await settle()
    expect(left.store.suggested.value).toEqual([])
  })

  test('that cannot be says why', async () => {
    const fault = { code: 'no-route', at: 'route', message: 'No route leads there.' }
    const { press, text } = show({ nearRoutes: async () => bad(fault) })
    press('Suggest a route')
    await settle()
    expect(text()).toContain('No route leads there.')
  })

  test('pays what the person says it shall pay', async () => {
    const asked: unknown[] = []
    const { press, give, openAll } = show({
      nearRoutes: async ({ weights }) => {
        asked.push(weights)
        return ok(WAY)
      },
    })
    openAll()
    give('Crossing a road', '1000')
    press('Suggest a route')
    await settle()
    expect(asked).toMatchObject([{ toll: { road: 1000 } }])
  })
})

test('suggested nets are weighed side by side, and the one that is shown is drawn as one step', async () => {
  const lone = 'lone' as StationId
  const plan = {
    ...SMALL_PLAN,
    stations: new Map(SMALL_PLAN.stations).set(lone, {
      ...{ id: lone, name: 'Oak', note: '' },
      position: [11.01, 47.005] as Position,
    }),
  }
  const link = (from: StationId, to: StationId) => ({
    ...{ from, to, bends: [], lays: ['surface'] as const, mapM: 1100 },
  })
  const nets = [
    { shape: 'tree', links: [link(HUT, FORD), link(FORD, lone)], mapM: 2200, cost: 2200 },
    { shape: 'ring', links: [link(HUT, FORD), link(FORD, lone), link(lone, HUT)], mapM: 3300, cost: 3300 },
  ] as const
  const store = createStore(plan)
  const askedM: (number | undefined)[] = []
  const suggestNets: GroundWorker['suggestNets'] = async ({ apartM }) => {
    askedM.push(apartM)
    return ok([...nets])
  }
  store.groundWorker.value = { suggestNets } as GroundWorker
  const { press, all, give, openAll } = page(
    <NetOffer store={store} stations={[HUT, FORD, lone]} circuit={NET} />,
  )
  press('Suggest nets for 3 stations')
  await settle()
  openAll()
  give('At least', '80')
  press('Suggest nets for 3 stations')
  await settle()
  // 50 m unless a person says otherwise.
  expect(askedM).toEqual([50, 80])
  expect(all('.weighed thead button').map((each) => each.textContent)).toEqual(['Tree', 'Ring'])
  expect(all('.weighed .verdict')).toHaveLength(4)
  expect(store.suggested.value).toHaveLength(2)
  press('Ring')
  expect(store.suggested.value).toHaveLength(3)
  press('Draw the ring')
  expect(store.plan.value.lines.size).toBe(3)
  expect(store.plan.value.circuits.get(NET)?.lines).toHaveLength(3)
  store.undo()
  expect(store.plan.value).toBe(plan)
})

test('nets for 50,000 stations that nothing joins are offered without going over them by pairs', () => {
  const stations = new Map(
    Array.from({ length: 50_000 }, (_, index) => {
      const id = `s${index}` as StationId
      return [id, { id, name: `Post ${index}`, note: '', position: [11 + index / 1e5, 47] as Position }]
    }),
  )
  const store = createStore()
  store.groundWorker.value = { suggestNets: async () => ok([]) } as unknown as GroundWorker
  store.open({ ...EMPTY_PLAN, stations })
  // By pairs it takes three seconds of a processor and more, else a tenth of one.
  expect(cpuSeconds(() => page(<NetOffer store={store} stations={[...stations.keys()]} />))).toBeLessThan(1)
})

test('the tension of a span gives its sag, by the catenary: twice the pull, half the sag', () => {
  const store = createStore(SMALL_PLAN)
  const fields = () =>
    page(<OverheadFields store={store} line={line(store)} measured={measured(store)} index={1} />)
  const before = Number(fields().control('Tension').value)
  fields().give('Tension', String(before * 2))
  expect(line(store).legs[1]!.sagPct! / SMALL_PLAN.allowances.sagPct).toBeCloseTo(0.5, 1)
  const { text, give } = fields()
  expect(text()).toMatch(/\d+ spans of \d+ m; at 49 °C the lowest clears the ground by [\d.]+ m\./)
  expect(text()).toMatch(/At -20 °C it pulls \d+ N and breaks at [\d.]+ times that\./)
  give('Supports', '8')
  expect(line(store).legs[1]!.supportM).toBe(8)
})

test('features of a file become hazards as the person says, in one step', () => {
  const store = createStore(SMALL_PLAN)
  const geometry = { type: 'LineString' as const, coordinates: [[11, 47] as const, [11.1, 47] as const] }
  const named = (kind: string) => ({ geometry, properties: { class: kind } })
  store.imported.value = {
    name: 'roads.geojson',
    features: {
      features: [named('canal'), named('hedge'), named('hedge')],
      properties: [{ name: 'class', values: [{ value: 'hedge', count: 2 }, { value: 'canal', count: 1 }] }], // biome-ignore format: one line
      leftOut: 0,
    },
  }
  const { press, give, control } = page(<HazardImport store={store} />)
  give('Told apart by', 'class')
  expect([control('canal (1)').value, control('hedge (2)').value]).toEqual(['water', ''])
  give('hedge (2)', 'keep-out')
  press('Add 3 hazards')
  const kinds = [...store.plan.value.hazards.values()].map(({ hazard }) => hazard)
  expect(kinds).toEqual(['water', 'keep-out', 'keep-out'])
  expect(store.imported.value).toBeNull()
  store.undo()
  expect(store.plan.value).toBe(SMALL_PLAN)
})
