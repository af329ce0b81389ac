/** How a job tells of itself before it ends. */
export interface Tell<Part> {
  /** Sends a part of the answer ahead, or how far the work is. */
  part(part: Part): void
  /** Moves this memory to the page with the answer: what is large is not copied. */
  handOver(memory: ArrayBufferLike | ImageBitmap): void
}

/** What a worker can do, by name. A job takes one question, may send parts, and ends with its answer. */
export type JobTable = Readonly<Record<string, (question: never, tell: Tell<never>) => unknown>>

export type QuestionOf<T extends JobTable, K extends keyof T> = Parameters<T[K]>[0]
export type AnswerOf<T extends JobTable, K extends keyof T> = Awaited<ReturnType<T[K]>>
export type PartOf<T extends JobTable, K extends keyof T> =
  Parameters<T[K]> extends readonly [unknown, Tell<infer Part>] ? Part : never

/** What the page sends; `job` comes back with every reply. */
export interface Ask {
  readonly job: number
  readonly kind: string
  readonly question: unknown
}

/** What the worker sends: parts, and then one of the two ends. A failure is an answer like any other. */
export type Reply =
  | { readonly job: number; readonly is: 'part'; readonly part: unknown }
  | { readonly job: number; readonly is: 'done'; readonly answer: unknown }
  | { readonly job: number; readonly is: 'failed'; readonly why: string }

/** The side of a worker that faces the page. */
export interface Door extends EventTarget {
  postMessage(reply: Reply, transfer: Transferable[]): void
}

export const whyOf = (error: unknown): string =>
  error instanceof Error && error.message ? error.message : String(error)
