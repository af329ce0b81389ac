import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import type { Tell } from '../../src/jobs/protocol'
import { workerClient } from '../../src/jobs/worker-client'
import { workersHere } from './worker-here'

let letGo: () => void = () => undefined

const JOBS = {
  double: (n: number) => 2 * n,
  count: async (to: number, tell: Tell<number>) => {
    for (let n = 1; n <= to; n++) {
      tell.part(n)
      await Promise.resolve()
    }
    return 'counted'
  },
  throws: () => {
    throw new Error('a wire is of length NaN')
  },
  throwsLater: async () => {
    await Promise.resolve()
    throw new Error('too late.')
  },
  uncloneable: () => () => 'a function cannot be sent',
  waits: () =>
    new Promise<string>((resolve) => {
      letGo = () => resolve('at last')
    }),
  hangs: () => new Promise<never>(() => undefined),
  handsOver: (length: number, tell: Tell<never>) => {
    const heights = new Float32Array(length)
    tell.handOver(heights.buffer)
    return heights
  },
}

function client() {
  const { workers, start } = workersHere(JOBS)
  return { workers, ...workerClient<typeof JOBS>({ what: 'The sum', start, silenceS: 5 }) }
}
const sentenceOf = (result: Awaited<ReturnType<ReturnType<typeof client>['ask']>>) =>
  result?.ok === false ? result.problems[0]!.message : `no failure: ${JSON.stringify(result)}`

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())
const pass = (ms: number) => vi.advanceTimersByTimeAsync(ms)

describe('an answer', () => {
  test('comes from a worker that is started for the first question and serves the next', async () => {
    const { ask, workers } = client()
    expect(workers).toEqual([])
    expect(await ask('double', 21)).toEqual({ ok: true, value: 42 })
    expect(await ask('double', 2)).toEqual({ ok: true, value: 4 })
    expect(workers).toHaveLength(1)
  })

  test('is preceded by its parts', async () => {
    const parts: number[] = []
    const answer = await client().ask('count', 3, { onPart: (part) => parts.push(part) })
    expect([answer, parts]).toEqual([{ ok: true, value: 'counted' }, [1, 2, 3]])
  })

  test('may hand its memory over', async () => {
    expect(await client().ask('handsOver', 3)).toEqual({ ok: true, value: new Float32Array(3) })
  })
})

describe('a failure is an answer', () => {
  test.each(['throws', 'throwsLater', 'uncloneable'] as const)('where a job %s', async (kind) => {
    const { ask, workers } = client()
    expect(sentenceOf(await ask(kind, undefined as never))).toMatch(
      /^The sum stopped unexpectedly \(.+[^.]\)\. /,
    )
    expect(workers[0]!.ended).toBe(true)
    expect(await ask('double', 1)).toEqual({ ok: true, value: 2 })
  })

  test('where a promise was forgotten in the worker', async () => {
    const { ask, workers } = client()
    const answer = ask('hangs', undefined as never)
    await pass(0)
    workers[0]!.dropPromise(new Error('no such grid'))
    expect(sentenceOf(await answer)).toContain('(no such grid)')
  })

  test('where the worker dies or never starts', async () => {
    const { ask, workers } = client()
    const answer = ask('hangs', undefined as never)
    await pass(0)
    workers[0]!.break('out of memory')
    expect(sentenceOf(await answer)).toContain('(out of memory)')
    const none = workerClient<typeof JOBS>({
      what: 'The sum',
      start: () => {
        throw new Error('workers are forbidden here')
      },
      silenceS: 5,
    })
    expect(sentenceOf(await none.ask('double', 1))).toContain('(workers are forbidden here)')
  })

  test('where the question cannot be sent', async () => {
    expect(sentenceOf(await client().ask('double', (() => 1) as unknown as number))).toContain(
      'The sum stopped',
    )
  })

  test('where a worker is silent for too long; one that speaks is left to work', async () => {
    const { ask, workers } = client()
    const answer = ask('hangs', undefined as never)
    await pass(4000)
    expect(workers[0]!.ended).toBe(false)
    await pass(1500)
    expect(sentenceOf(await answer)).toMatch(/^The sum gave no sign of life for 5 s/)
    expect(workers[0]!.ended).toBe(true)
    expect(await ask('double', 1)).toEqual({ ok: true, value: 2 })
  })
})

describe('an answer that nobody wants any more is dropped', () => {
  test('when it is stopped: its worker ends, and the next question has another', async () => {
    const { ask, workers } = client()
    const stop = new AbortController()
    const stopped = ask('hangs', undefined as never, { signal: stop.signal })
    const next = ask('double', 4)
    await pass(0)
    stop.abort()
    expect(await stopped).toBeUndefined()
    expect(await next).toEqual({ ok: true, value: 8 })
    expect(workers.map(({ ended }) => ended)).toEqual([true, false])
  })

  test('when it is stopped before its turn: nothing is asked', async () => {
    const { ask, workers } = client()
    expect(await ask('double', 1, { signal: AbortSignal.abort() })).toBeUndefined()
    expect(workers).toEqual([])
  })

  test('when it is about another plan by now, parts and all', async () => {
    const { ask, workers } = client()
    let plan = 'Quarry net'
    const about = () => [plan]
    const answer = ask('waits', undefined as never, { about })
    await pass(0)
    plan = 'Empty plan'
    letGo()
    expect(await answer).toBeUndefined()
    // It had finished: the worker is as good as before.
    expect(workers[0]!.ended).toBe(false)
    const parts: number[] = []
    const counted = ask('count', 9, {
      about,
      onPart: (part) => {
        parts.push(part)
        plan = 'Third plan'
      },
    })
    expect(await counted).toBeUndefined()
    expect(parts).toEqual([1])
    expect(workers[0]!.ended).toBe(true)
  })

  test('when the client is done with', async () => {
    const { ask, dispose, workers } = client()
    const answer = ask('hangs', undefined as never)
    await pass(0)
    dispose()
    expect(await answer).toBeUndefined()
    expect(workers[0]!.ended).toBe(true)
  })
})
