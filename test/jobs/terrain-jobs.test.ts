import { describe, expect, test } from 'vitest'
import { terrainJobs } from '../../src/jobs/terrain-jobs'
import type { TerrainAnswer, TerrainTask } from '../../src/jobs/terrain-worker'
import type { RouteRequest } from '../../src/route/suggest-route'

/** A worker that answers as told, and notes what it was asked and whether it was ended. */
class ScriptedWorker extends EventTarget {
  readonly asked: TerrainTask[] = []
  ended = false
  private readonly answer: (task: TerrainTask) => readonly TerrainAnswer[]
  constructor(answer: (task: TerrainTask) => readonly TerrainAnswer[]) {
    super()
    this.answer = answer
  }
  postMessage(task: TerrainTask): void {
    this.asked.push(task)
    for (const data of this.answer(task)) {
      queueMicrotask(() => this.dispatchEvent(new MessageEvent('message', { data })))
    }
  }
  terminate(): void {
    this.ended = true
  }
}

const request = { from: [0, 0], to: [1, 1], hazards: [] } as unknown as RouteRequest
const found = { ok: true, value: { bends: [], lays: ['surface'], mapM: 1, cost: 1, cellM: 5 } } as const
const grid = { name: 'g' } as never

const answering = (task: TerrainTask): TerrainAnswer[] =>
  task.kind === 'grids'
    ? [{ job: task.job, kept: true }]
    : [
        { job: task.job, done: 0.5 },
        { job: task.job, route: found },
      ]

function jobsWith(answer: (task: TerrainTask) => readonly TerrainAnswer[]) {
  const workers: ScriptedWorker[] = []
  const jobs = terrainJobs(() => {
    workers.push(new ScriptedWorker(answer))
    return workers.at(-1) as unknown as Worker
  })
  return { jobs, workers }
}

describe('work on the ground', () => {
  test('starts no worker before there is work, and tells how far it is', async () => {
    const { jobs, workers } = jobsWith(answering)
    expect(workers).toEqual([])
    const told: number[] = []
    expect(await jobs.suggestRoute(request, { onProgress: (part) => told.push(part) })).toEqual(found)
    expect(told).toEqual([0.5])
  })

  test('sends the grids once, before the first search on them', async () => {
    const { jobs, workers } = jobsWith(answering)
    jobs.setGrids([grid])
    await jobs.suggestRoute(request)
    await jobs.suggestRoute(request)
    expect(workers[0]!.asked.map(({ kind }) => kind)).toEqual(['grids', 'route', 'route'])
  })

  test('that is stopped ends its worker; the next job has a new one, with the grids', async () => {
    let isDeaf = true
    const { jobs, workers } = jobsWith((task) => (task.kind === 'route' && isDeaf ? [] : answering(task)))
    jobs.setGrids([grid])
    const stop = new AbortController()
    const search = jobs.suggestRoute(request, { signal: stop.signal })
    const next = jobs.suggestRoute(request)
    await new Promise((resolve) => setTimeout(resolve, 5))
    isDeaf = false
    stop.abort(new Error('enough'))
    await expect(search).rejects.toThrow('enough')
    expect(await next).toEqual(found)
    expect(workers.map(({ ended }) => ended)).toEqual([true, false])
    expect(workers[1]!.asked.map(({ kind }) => kind)).toEqual(['grids', 'route'])
  })

  test('that is stopped before its turn asks nothing', async () => {
    const { jobs, workers } = jobsWith(answering)
    await expect(jobs.suggestRoute(request, { signal: AbortSignal.abort() })).rejects.toThrow()
    expect(workers).toEqual([])
  })

  test('of a worker that breaks rejects, and goes on with another', async () => {
    let isBroken = true
    const { jobs, workers } = jobsWith((task) => (isBroken ? [] : answering(task)))
    const search = jobs.suggestRoute(request)
    await new Promise((resolve) => setTimeout(resolve, 5))
    workers[0]!.dispatchEvent(Object.assign(new Event('error'), { message: 'out of memory' }))
    await expect(search).rejects.toThrow('out of memory')
    isBroken = false
    expect(await jobs.suggestRoute(request)).toEqual(found)
  })
})
