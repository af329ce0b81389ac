import { effect, type ReadonlySignal, type Signal } from '@preact/signals'
import { knownGrids } from '../jobs/known-grids'
import { workerClient } from '../jobs/worker-client'
import type { Store } from '../state/store'
import { bodyOf, type PaperSize } from './layout/paper-size'
import type { MadePaper, PAPER_JOBS } from './paper-jobs'

/** The papers as far as they are made. */
export interface Making {
  readonly papers: readonly MadePaper[]
  readonly state: 'under way' | 'ready' | 'failed'
  /** Why no more will come. */
  readonly failure: string
}

export const NOTHING_MADE: Making = { papers: [], state: 'under way', failure: '' }

/** What a person chooses for all papers alike. `attempt`: another number makes them anew. */
interface Wishes {
  readonly size: ReadonlySignal<PaperSize>
  readonly date: ReadonlySignal<string>
  readonly attempt: ReadonlySignal<number>
}

/** The reach tables of one large circuit take long, s. */
const SILENCE_S = 120

/** Keeps a signal filled with the papers of the plan, made off the main thread. Returns the undoing of itself. */
export function makePapers(store: Store, wishes: Wishes, making: Signal<Making>): () => void {
  const grids = knownGrids()
  const jobs = workerClient<typeof PAPER_JOBS>({
    what: 'Making the papers',
    start: () => new Worker(new URL('./paper-worker.ts', import.meta.url), { type: 'module' }),
    silenceS: SILENCE_S,
    prepare: (_kind, isNew) => grids.prepare(isNew),
  })
  const stop = effect(() => {
    wishes.attempt.value
    grids.set(store.ground.value?.grids ?? [])
    const question = {
      plan: store.plan.value,
      report: store.report.value,
      system: store.units.value,
      date: wishes.date.value,
      room: bodyOf(wishes.size.value),
    }
    making.value = NOTHING_MADE
    const stopper = new AbortController()
    const following = {
      signal: stopper.signal,
      about: () => [store.plan.peek(), store.ground.peek()],
      onPart: (paper: MadePaper) => {
        making.value = { ...making.peek(), papers: [...making.peek().papers, paper] }
      },
    }
    void jobs.ask('papers', question, following).then((result) => {
      if (!result) return
      const failure = result.ok ? '' : result.problems[0]!.message
      making.value = { ...making.peek(), state: result.ok ? 'ready' : 'failed', failure }
    })
    return () => stopper.abort()
  })
  return () => {
    stop()
    jobs.dispose()
  }
}
