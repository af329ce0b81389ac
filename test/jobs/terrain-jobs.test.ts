import { describe, expect, test } from 'vitest'
import type { Tell } from '../../src/jobs/protocol'
import { terrainJobs } from '../../src/jobs/terrain-jobs'
import { bad } from '../../src/problem'
import type { RouteRequest } from '../../src/route/suggest-route'
import { workersHere } from './worker-here'

const request = { from: [0, 0], to: [1, 1], hazards: [] } as unknown as RouteRequest
const found = { ok: true, value: { bends: [], lays: ['surface'], mapM: 1, cost: 1, cellM: 5 } } as const
const grid = { name: 'g' } as never
const refused = bad({ code: 'no-route', at: 'route', message: 'No route leads there.' })

function jobsWith(route: (request: RouteRequest, tell: Tell<number>) => unknown) {
  const { workers, start } = workersHere({ grids: () => undefined, read: () => refused, route })
  return { jobs: terrainJobs(start), workers }
}
const finds = (_: RouteRequest, tell: Tell<number>) => {
  tell.part(0.5)
  return found
}

describe('work on the ground', () => {
  test('tells how far it is', async () => {
    const { jobs } = jobsWith(finds)
    const told: number[] = []
    expect(await jobs.suggestRoute(request, { onProgress: (part) => told.push(part) })).toEqual(found)
    expect(told).toEqual([0.5])
  })

  test('sends the grids once, before the first search on them, and no earlier', async () => {
    const { jobs, workers } = jobsWith(finds)
    jobs.setGrids([grid])
    await jobs.readGrid(new File([], 'a.tif'), undefined)
    await jobs.suggestRoute(request)
    await jobs.suggestRoute(request)
    expect(workers[0]!.asked).toEqual(['read', 'grids', 'route', 'route'])
    jobs.setGrids([])
    await jobs.suggestRoute(request)
    expect(workers[0]!.asked.slice(4)).toEqual(['grids', 'route'])
  })

  test('that is stopped ends its worker; the next job has a new one, with the grids', async () => {
    let isDeaf = true
    const { jobs, workers } = jobsWith(() => (isDeaf ? new Promise(() => undefined) : found))
    jobs.setGrids([grid])
    const stop = new AbortController()
    const search = jobs.suggestRoute(request, { signal: stop.signal })
    const next = jobs.suggestRoute(request)
    await new Promise((resolve) => setTimeout(resolve, 5))
    isDeaf = false
    stop.abort()
    expect(await search).toBeUndefined()
    expect(await next).toEqual(found)
    expect(workers.map(({ ended }) => ended)).toEqual([true, false])
    expect(workers[1]!.asked).toEqual(['grids', 'route'])
  })

  test('that refuses and that breaks both come back with a sentence', async () => {
    expect(await jobsWith(() => refused).jobs.suggestRoute(request)).toEqual(refused)
    const broken = await jobsWith(() => Promise.reject(new Error('heap'))).jobs.suggestRoute(request)
    expect(broken?.ok === false && broken.problems[0]!.message).toMatch(
      /^The work on the ground stopped .*heap/,
    )
  })
})
