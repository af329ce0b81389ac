import { bad, ok, type Result } from '../problem'
import { jobFailedSentence, jobSilentSentence } from '../words/job-words'
import {
  type AnswerOf,
  type Ask,
  type JobTable,
  type PartOf,
  type QuestionOf,
  type Reply,
  whyOf,
} from './protocol'

/** How a job is followed, and how it is stopped. */
export interface Following<Part> {
  readonly signal?: AbortSignal | undefined
  readonly onPart?: ((part: Part) => void) | undefined
  /** What the question is about: where this is no longer the same when a reply comes, the reply is dropped and the job ended. */
  readonly about?: (() => readonly unknown[]) | undefined
}

export interface WorkerClient<T extends JobTable> {
  /**
   * Asks, and waits for the answer. A job that throws, a worker that dies and one that falls silent are answers too: a `Problem` with a
   * sentence. Undefined where the job was stopped, or where nobody wants its answer any more. Never rejects.
   */
  ask<K extends keyof T & string>(
    kind: K,
    question: QuestionOf<T, K>,
    following?: Following<PartOf<T, K>>,
  ): Promise<Result<AnswerOf<T, K>> | undefined>
  /** Ends the worker; a later question starts another. */
  dispose(): void
}

interface Making<T extends JobTable> {
  /** What is being done, as the subject of a sentence: `The search for a route`. */
  readonly what: string
  readonly start: () => Worker
  /** How long a job may go without a word, seconds of a machine that is awake. */
  readonly silenceS: number
  /** What a worker must know before a job of this kind; undefined for nothing. */
  readonly prepare?: (kind: keyof T & string, isNew: boolean) => Omit<Ask, 'job'> | undefined
}

/** One worker, asked one question after the other. It starts with the first; one that was stopped or failed is followed by another. */
export function workerClient<T extends JobTable>({
  what,
  start,
  silenceS,
  prepare,
}: Making<T>): WorkerClient<T> {
  let worker: Worker | undefined
  let lastJob = 0
  let tail: Promise<unknown> = Promise.resolve()
  let giveUp: (() => void) | undefined
  const end = () => {
    worker?.terminate()
    worker = undefined
  }

  /** One question to the worker there is. Ends it where it does not answer properly: it hears nothing while it works. */
  const send = (
    asked: Omit<Ask, 'job'>,
    { signal, onPart, about }: Following<never>,
  ): Promise<Result<unknown> | undefined> =>
    new Promise((resolve) => {
      const own = worker!
      const job = ++lastJob
      const before = about?.()
      const isStale = () => before !== undefined && about!().some((each, i) => each !== before[i])
      let silentS = 0
      const settle = (result: Result<unknown> | undefined, isFit: boolean) => {
        clearInterval(watchdog)
        giveUp = undefined
        own.removeEventListener('message', onMessage)
        own.removeEventListener('messageerror', onBreak)
        own.removeEventListener('error', onBreak)
        signal?.removeEventListener('abort', onAbort)
        if (!isFit && worker === own) end()
        resolve(result)
      }
      const fail = (why: string) =>
        settle(bad({ code: 'job-failed', at: asked.kind, message: jobFailedSentence(what, why) }), false)
      const onMessage = ({ data }: MessageEvent<Reply>) => {
        if (data.job !== job) return
        silentS = 0
        if (isStale()) settle(undefined, data.is === 'done')
        else if (data.is === 'part') onPart?.(data.part as never)
        else if (data.is === 'done') settle(ok(data.answer), true)
        else fail(data.why)
      }
      const onBreak = (event: Event) =>
        fail((event as ErrorEvent).message || 'its script could not be run or fetched')
      const onAbort = () => settle(undefined, false)
      giveUp = onAbort
      // Counted, not clocked: a machine that slept has not waited.
      const watchdog = setInterval(() => {
        silentS += 1
        if (silentS < silenceS) return
        const message = jobSilentSentence(what, silenceS)
        settle(bad({ code: 'job-silent', at: asked.kind, message }), false)
      }, 1000)
      own.addEventListener('message', onMessage)
      own.addEventListener('messageerror', onBreak)
      own.addEventListener('error', onBreak)
      signal?.addEventListener('abort', onAbort)
      try {
        own.postMessage({ ...asked, job })
      } catch (error) {
        fail(whyOf(error))
      }
    })

  const inTurn = async (
    kind: keyof T & string,
    question: unknown,
    following: Following<never>,
  ): Promise<Result<unknown> | undefined> => {
    if (following.signal?.aborted) return undefined
    const isNew = worker === undefined
    try {
      worker ??= start()
    } catch (error) {
      return bad({ code: 'job-failed', at: kind, message: jobFailedSentence(what, whyOf(error)) })
    }
    const first = prepare?.(kind, isNew)
    const prepared = first && (await send(first, { signal: following.signal }))
    if (first && !prepared?.ok) return prepared
    return send({ kind, question }, following)
  }

  return {
    ask: (kind, question, following = {}) => {
      // One waits for the other, so that stopping one never takes another's worker from it.
      const turn = tail.then(() => inTurn(kind, question, following as Following<never>))
      tail = turn
      return turn as Promise<Result<AnswerOf<T, typeof kind>> | undefined>
    },
    dispose: () => {
      giveUp?.()
      end()
    },
  }
}
