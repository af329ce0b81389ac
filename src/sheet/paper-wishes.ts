import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import { useMemo } from 'preact/hooks'
import { setPaperWishes } from '../plan/settings-edits'
import type { Store } from '../state/store'
import { PAPER_SIZES, type PaperSize } from './layout/paper-size'
import {
  FIRST_PAPERS,
  PAPER_NAMES,
  type PaperName,
  WITH_A_BOARD,
  WITH_SHADES,
  WITH_WAYS,
} from './paper-names'
import { type PaperScope, WHOLE_NET } from './paper-scope'

/** What a person wants of the papers. Revision, size and kinds stay with the plan; the rest is for this printing. */
export interface Wishes {
  readonly size: ReadonlySignal<PaperSize>
  readonly revision: Signal<string>
  readonly chosen: ReadonlySignal<ReadonlySet<PaperName>>
  readonly date: Signal<string>
  readonly scope: Signal<PaperScope>
  /** Name of the sheets of labels. */
  readonly labels: Signal<string>
  /** The printer prints on both sides: each paper begins on a front. */
  readonly bothSides: Signal<boolean>
  /** Another number makes them anew. */
  readonly attempt: Signal<number>
  readonly keepSize: (name: string) => void
  readonly keepRevision: () => void
  readonly choose: (name: PaperName, wanted: boolean) => void
  readonly chooseAll: () => void
}

const FIRST_REVISION = '1'

const today = () => {
  const now = new Date()
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10)
}

export const usePaperWishes = (store: Store): Wishes => useMemo(() => wishesOf(store), [store])

function wishesOf(store: Store): Wishes {
  const kept = computed(() => store.plan.value.papers)
  const usual = computed(() => (store.units.value === 'us' ? 'Letter' : 'A4'))
  const size = computed(() => {
    const sizeOf = (wanted: string | undefined) => PAPER_SIZES.find(({ name }) => name === wanted)
    return sizeOf(kept.value?.size) ?? sizeOf(usual.value) ?? PAPER_SIZES[0]!
  })
  const hasBoard = computed(() => store.report.value.circuits.some(({ switchboard }) => switchboard))
  const chosen = computed(() => {
    const kinds = kept.value?.kinds
    const first = [
      ...FIRST_PAPERS,
      ...(hasBoard.value ? WITH_A_BOARD : []),
      ...(store.farAsked.value ? WITH_SHADES : []),
      ...(store.besideSuggested.value.told ? WITH_WAYS : []),
    ]
    const isChosen = (name: PaperName) => (kinds ?? first).includes(name)
    return new Set(PAPER_NAMES.filter(isChosen))
  })
  const revision = signal(kept.peek()?.revision ?? FIRST_REVISION)
  return {
    size,
    chosen,
    revision,
    date: signal(today()),
    scope: signal(WHOLE_NET),
    labels: signal(''),
    bothSides: signal(false),
    attempt: signal(0),
    keepSize: (name) => store.edit((plan) => setPaperWishes(plan, { size: name })),
    keepRevision: () => {
      if (revision.peek() !== (kept.peek()?.revision ?? FIRST_REVISION))
        store.edit((plan) => setPaperWishes(plan, { revision: revision.peek() }))
    },
    chooseAll: () => store.edit((plan) => setPaperWishes(plan, { kinds: PAPER_NAMES })),
    choose: (name, wanted) => {
      const kinds = PAPER_NAMES.filter((each) => (each === name ? wanted : chosen.peek().has(each)))
      store.edit((plan) => setPaperWishes(plan, { kinds }))
    },
  }
}
