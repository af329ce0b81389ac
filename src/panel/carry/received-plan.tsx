import { useSignal } from '@preact/signals'
import { useEffect, useMemo } from 'preact/hooks'
import { takeJournalOut } from '../../files/carried-journal'
import type { Kinship } from '../../files/carry/kinship'
import { completed } from '../../files/carry/light-plan'
import { isolated } from '../../isolated'
import { type Difference, differences } from '../../journal/differences'
import type { Journal } from '../../journal/journal'
import { circuitName, lineName, type Plan, stationName } from '../../plan/plan'
import type { ReceivedThing } from '../../state/open-things'
import type { Store } from '../../state/store'
import type { Keeper } from '../../storage/keeper'
import { formatCount } from '../../words/units'
import { CarryDialog } from './carry-dialog'
import { kinshipWith, mergeIn, takeJournal } from './merge-in'
import { ReceivedLine } from './received-line'

interface Props {
  readonly store: Store
  readonly keeper: Keeper | null
  readonly received: Plan
}

/** What came in: a whole plan, or a line of one. */
export function ReceivedThings({
  received,
  ...at
}: Omit<Props, 'received'> & { readonly received: ReceivedThing }) {
  const { plan, partOf } = received
  return partOf === undefined ? (
    <ReceivedPlan {...at} received={plan} />
  ) : (
    <ReceivedLine {...at} part={plan} partOf={partOf} />
  )
}

/** A plan that came in, beside the one on the table: the person says what becomes of it, and nothing is laid over anything unasked. */
function ReceivedPlan({ store, keeper, received: came }: Props) {
  const mine = store.settled.value
  const { plan: bare, journal } = useMemo(() => takeJournalOut(came), [came])
  const received = useMemo(() => completed(bare, mine), [bare, mine])
  const kept = useSignal<readonly Plan[] | null>(null)
  const own = useSignal<Journal | null>(null)
  useEffect(() => {
    void Promise.all([keeper?.versionPlans() ?? [], store.ownJournal.peek()?.upToNow(false) ?? null]).then(
      ([plans, found]) => {
        own.value = found
        kept.value = plans
      },
    )
  }, [keeper])
  const kinship = useMemo(
    () => kept.value && kinshipWith(mine, received, kept.value, own.value, journal),
    [mine, received, kept.value],
  )
  /** Where both have the journal of one plan, that tells what each had seen of the other, and no base is needed. */
  const joined = journal && own.value?.id === journal.id ? { mine: own.value, theirs: journal } : null
  const close = () => {
    store.received.value = null
  }
  const act = (work: () => void) => () => {
    work()
    close()
  }
  return (
    <CarryDialog title="A plan has come in" onClose={close}>
      <div class="side-by-side">
        <Facts heading="What came in" plan={received} />
        <Facts heading="On the table" plan={mine} />
      </div>
      {kinship && (
        <>
          <p>{SENTENCES[kinship.is]}</p>
          {isOfOneMake(kinship) && <DifferenceList mine={mine} theirs={received} />}
          <div class="acts">
            {isOfOneMake(kinship) && (
              <button
                type="button"
                onClick={act(() => {
                  void keeper?.keepVersion('Before another one came in')
                  store.edit(() => received)
                  if (joined) takeJournal(store, joined)
                })}
              >
                Take it in the place of mine
              </button>
            )}
            {kinship.is === 'both changed' && (joined || kinship.base) && (
              <button
                type="button"
                onClick={act(() => {
                  void keeper?.keepVersion('Before the two were merged')
                  mergeIn(store, received, joined ?? kinship.base!)
                })}
              >
                Merge the two
              </button>
            )}
            <button
              type="button"
              onClick={act(() => {
                store.open(received)
                if (journal && received === bare) void store.ownJournal.peek()?.keep(journal)
              })}
            >
              Open it as a plan of its own
            </button>
            <button type="button" onClick={close}>
              Leave it
            </button>
          </div>
          <p class="soft">
            {isOfOneMake(kinship)
              ? 'Whichever you choose, your plan is kept as a version, and undo leads back.'
              : 'The plan on the table stays among those that are kept in this browser.'}
          </p>
        </>
      )}
    </CarryDialog>
  )
}

const isOfOneMake = ({ is }: Kinship): boolean => is === 'newer' || is === 'older' || is === 'both changed'

const SENTENCES: Readonly<Record<Kinship['is'], string>> = {
  same: 'It is the plan on the table, to the last figure.',
  newer:
    'It is the plan on the table, gone on from where you handed it over: you have changed nothing since.',
  older: 'It is an earlier state of the plan on the table: taking it would set you back.',
  'both changed': 'It is the plan on the table, but since it was handed over both have been changed.',
  another: 'It is another plan.',
}

function Facts({ heading, plan }: { heading: string; plan: Plan }) {
  return (
    <section>
      <h2>{heading}</h2>
      <p>
        <bdi>{plan.title || 'Without a title'}</bdi>
      </p>
      <p class="soft">
        {formatCount(plan.stations.size, 'station')}, {formatCount(plan.lines.size, 'line')},{' '}
        {formatCount(plan.circuits.size, 'circuit')}
      </p>
    </section>
  )
}

/** So many are named; what is beyond them is counted. */
const MOST_NAMED = 12
const BECAME = { added: 'only in what came in', removed: 'only on the table', changed: 'different' } as const

function DifferenceList({ mine, theirs }: { mine: Plan; theirs: Plan }) {
  const { things, settings } = useMemo(() => differences(mine, theirs), [mine, theirs])
  const rest = things.length - MOST_NAMED
  return (
    <ul class="plain-list">
      {things.slice(0, MOST_NAMED).map((each) => (
        <li key={`${each.kind} ${each.id}`}>
          {nameOf(each, each.became === 'removed' ? mine : theirs)}: {BECAME[each.became]}
        </li>
      ))}
      {rest > 0 && <li>and {formatCount(rest, 'other')}</li>}
      {settings && <li>Settings, catalog or stock: different</li>}
    </ul>
  )
}

function nameOf({ kind, id }: Difference, plan: Plan): string {
  switch (kind) {
    case 'stations':
      return `Station ${stationName(plan, id)}`
    case 'lines':
      return `Line ${lineName(plan, plan.lines.get(id as never)!)}`
    case 'circuits':
      return `Circuit ${circuitName(plan, plan.circuits.get(id as never)!)}`
    case 'hazards':
      return `In the way: ${isolated(plan.hazards.get(id as never)!.name || id)}`
  }
}
