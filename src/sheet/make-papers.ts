import { computed, effect, type Signal } from '@preact/signals'
import { knownGrids } from '../jobs/known-grids'
import { workerClient } from '../jobs/worker-client'
import type { Plan } from '../plan/plan'
import { knownOdds } from '../state/known-odds'
import type { Store } from '../state/store'
import { farOnPaper } from './far-on-paper'
import { bodyOf } from './layout/paper-size'
import type { MadePaper, PAPER_JOBS, PaperQuestion } from './paper-jobs'
import type { Wishes } from './paper-wishes'
import { waysOnPaper } from './ways-on-paper'

/** The papers as far as they are made. */
export interface Making {
  readonly papers: readonly MadePaper[]
  readonly state: 'under way' | 'ready' | 'failed'
  /** Why no more will come. */
  readonly failure: string
}

export const NOTHING_MADE: Making = { papers: [], state: 'under way', failure: '' }

/** The reach tables of one large circuit take long, s. */
const SILENCE_S = 120

/** Keeps a signal filled with the papers of the plan, made off the main thread. Returns the undoing of itself. */
export function makePapers(
  store: Store,
  wishes: Pick<Wishes, 'size' | 'date' | 'scope' | 'labels' | 'chosen' | 'attempt'>,
  making: Signal<Making>,
): () => void {
  const grids = knownGrids()
  const jobs = workerClient<typeof PAPER_JOBS>({
    what: 'Making the papers',
    start: () => new Worker(new URL('./paper-worker.ts', import.meta.url), { type: 'module' }),
    silenceS: SILENCE_S,
    prepare: (_kind, isNew) => grids.prepare(isNew),
  })
  const asked = askedFor(store, wishes)
  const stop = effect(() => {
    wishes.attempt.value
    grids.set(store.ground.value?.grids ?? [])
    const { plan, report, odds, kinds } = asked.value
    const question = {
      ...{ plan, report, odds, kinds },
      system: store.units.value,
      date: wishes.date.value,
      scope: wishes.scope.value,
      labels: wishes.labels.value,
      far: farOnPaper(store),
      ways: waysOnPaper(store),
      room: bodyOf(wishes.size.value),
      program: /^https?:/.test(location.protocol) ? location.href : '',
    }
    making.value = NOTHING_MADE
    const stopper = new AbortController()
    const following = {
      signal: stopper.signal,
      about: () => [asked.peek(), store.ground.peek()],
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

type Asked = Pick<PaperQuestion, 'plan' | 'report' | 'odds' | 'kinds'> & {
  readonly ground: Store['ground']['value']
}

/**
 * Plan, report and kinds for which papers are made, with one identity for as long as none of them would come out otherwise: a wish of the plan's
 * papers is an edit of the plan, but changes no paper, and one that is no longer wanted need not be made again when it is.
 */
function askedFor(store: Store, { chosen }: Pick<Wishes, 'chosen'>) {
  let last: Asked | undefined
  return computed((): Asked => {
    const [plan, report] = [store.plan.value, store.report.value]
    const kinds = [...new Set([...(last?.kinds ?? []), ...chosen.value])]
    if (
      last &&
      isDrawnAlike(last.plan, plan) &&
      kinds.length === last.kinds.length &&
      store.ground.value === last.ground
    )
      return last
    last = { plan, report, kinds, odds: knownOdds(report.circuits), ground: store.ground.value }
    return last
  })
}

const isDrawnAlike = ({ papers: _a, ...a }: Plan, { papers: _b, ...b }: Plan): boolean =>
  Object.keys({ ...a, ...b }).every((key) => a[key as keyof typeof a] === b[key as keyof typeof b])
