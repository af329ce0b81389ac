import { type Signal, useSignal } from '@preact/signals'
import { isUnfinished } from '../../budget/circuit-notes'
import type { CheckKind, RowOf } from '../../budget/rows'
import { stationsOfCircuit } from '../../plan/circuit-topology'
import type { CircuitId } from '../../plan/id'
import { type Circuit, circuitName } from '../../plan/plan'
import type { Reckoned } from '../../state/circuit-prospect'
import type { Store } from '../../state/store'
import { ASKED_KINDS, wordsOf } from '../../words/check-words'
import { lackSentence, remarkSentence } from '../../words/circuit-notes'
import { tongueOf } from '../../words/tongue'
import { formatCount, formatMassKg, formatRunM } from '../../words/units'
import { CautionList } from '../caution-list'
import { OtherNets } from '../ground/net-questions'
import { loadWhenShown } from '../load-when-shown'
import { goToQuestion, Question } from '../question'
import { BudgetFigures } from './budget-figures'
import { CircuitSetup } from './circuit-setup'
import { MarginRows } from './margin-rows'
import { marginRows } from './margins'
import { NextStep } from './next-step'
import { Remedies } from './remedies'
import { Standing } from './standing'

const ProspectQuestions = loadWhenShown(async () => (await import('../study/prospect')).ProspectQuestions)
const ReachAlongRoute = loadWhenShown(async () => (await import('../study/prospect')).ReachAlongRoute)
const ReachStudies = loadWhenShown(async () => (await import('../study/circuit-studies')).ReachStudies)
const UpkeepStudies = loadWhenShown(async () => (await import('../study/circuit-studies')).UpkeepStudies)

const BoardQuestions = loadWhenShown(async () => (await import('./board-questions')).BoardQuestions)

const BestPlaces = loadWhenShown(async () => (await import('./best-places')).BestPlaces)

const SETUP = 'circuit-setup'
const UNFINISHED = 'The circuit is not finished: this can be told once it has what it lacks.'

/** One circuit: does it ring, does it talk, how far could it go, what would mend it, and what it is made of. */
export function CircuitCard({ store, id }: { store: Store; id: CircuitId }) {
  const plan = store.plan.value
  const circuit = plan.circuits.get(id)
  const found = store.report.value.circuits.find((each) => each.id === id)
  // Decided once, so that the fields stay under the hand that fills them.
  const setupFirst = useSignal((found?.missing.length ?? 0) > 0)
  const inWorst = useSignal(false)
  const reckoned = useSignal<Reckoned>({ prospect: null, failure: '' })
  if (!circuit || !found) return null
  const say = tongueOf(plan, store.units.value)
  const nameOf = say.name
  const figures = inWorst.value ? found.worst : found
  const unfinished = isUnfinished(found.missing)

  const setup = (
    <Question ask="What is it made of?" anchor={SETUP}>
      <CircuitSetup store={store} circuit={circuit} />
    </Question>
  )

  return (
    <>
      <h1>{circuitName(plan, circuit)}</h1>
      <Standing store={store} found={found} />
      {unfinished && found.missing[0] ? (
        <NextStep store={store} circuit={circuit} lack={found.missing[0]} />
      ) : (
        found.missing.length > 0 && (
          <ul class="missing">
            {found.missing.map((lack) => (
              <li key={JSON.stringify(lack)}>{lackSentence(lack, say)}</li>
            ))}
          </ul>
        )
      )}
      <Size store={store} circuit={circuit} />
      <Remedies store={store} circuit={circuit} found={found} />
      {setupFirst.value && setup}
      {found.switchboard && (
        <BoardQuestions store={store} circuit={circuit} found={found} reckoned={reckoned} />
      )}
      <WeatherSwitch inWorst={inWorst} />
      {ASKED_KINDS.map((kind) => (
        <CheckQuestion
          key={kind}
          kind={kind}
          circuit={circuit}
          rows={figures[kind]}
          nameOf={nameOf}
          unfinished={unfinished}
        />
      ))}
      {found.notes.length > 0 && (
        <ul class="notes">
          {found.notes.map((remark) => (
            <li key={JSON.stringify(remark)}>{remarkSentence(remark, say)}</li>
          ))}
        </ul>
      )}
      {!unfinished && <ProspectQuestions store={store} id={id} reckoned={reckoned} />}
      <Question ask="How far could it go?">
        {unfinished ? <p>{UNFINISHED}</p> : <ReachAlongRoute store={store} id={id} reckoned={reckoned} />}
        <ReachStudies store={store} id={id} />
      </Question>
      <Question ask="What do we carry?">
        <p>{carrySentence(store, circuit)}</p>
      </Question>
      <UpkeepStudies store={store} id={id} />
      <Hurts store={store} circuit={circuit} />
      {!unfinished && <BestPlaces store={store} circuit={circuit} found={found} />}
      <OtherNets store={store} circuit={circuit} />
      {!setupFirst.value && setup}
      <BudgetFigures store={store} circuit={circuit} found={found} />
    </>
  )
}

/** One kind of check: the question, its answer, and the margins. */
function CheckQuestion<K extends CheckKind>(props: {
  readonly kind: K
  readonly circuit: Circuit
  readonly rows: readonly RowOf[K][]
  readonly nameOf: (station: string) => string
  readonly unfinished: boolean
}) {
  const { ask, needsSupply, answer } = wordsOf(props.kind)
  if (needsSupply && !props.circuit.supply) return null
  return (
    <Question ask={ask}>
      <p>{props.unfinished ? UNFINISHED : answer(props.rows, props.nameOf)}</p>
      <MarginRows margins={marginRows(props.kind, props.rows, props.nameOf)} />
    </Question>
  )
}

/** Whether the figures below are those of the plan's own weather or of the worst. */
function WeatherSwitch({ inWorst }: { inWorst: Signal<boolean> }) {
  const choose = (worst: boolean, words: string) => (
    <button
      type="button"
      aria-pressed={inWorst.value === worst}
      onClick={() => {
        inWorst.value = worst
      }}
    >
      {words}
    </button>
  )
  return (
    <fieldset class="choice" aria-label="Figures of">
      {choose(false, 'today')}
      {choose(true, 'worst weather')}
    </fieldset>
  )
}

/** How large the circuit is, and the way to what it is made of. */
function Size({ store, circuit }: { store: Store; circuit: Circuit }) {
  return (
    <p class="soft">
      {formatCount(stationsOfCircuit(store.plan.value, circuit).length, 'station')},{' '}
      {formatRunM(wireOf(store, circuit).wireM, store.units.value)} of wire.{' '}
      <button type="button" class="quiet" onClick={() => goToQuestion(SETUP)}>
        Change it
      </button>
    </p>
  )
}

/** Wire of the circuit's lines: one pair of each, and the mass of all their pairs. */
function wireOf(store: Store, circuit: Circuit): { wireM: number; kg: number } {
  const lines = store.report.value.lines.filter((line) => circuit.lines.includes(line.id))
  return {
    wireM: lines.reduce((sum, line) => sum + line.wireM, 0),
    kg: lines.reduce((sum, line) => sum + line.kg, 0),
  }
}

function carrySentence(store: Store, circuit: Circuit): string {
  const { wireM, kg } = wireOf(store, circuit)
  const system = store.units.value
  const lines = formatCount(circuit.lines.length, 'line')
  return `${formatRunM(wireM, system)} of wire in ${lines}, ${formatMassKg(kg, system)} as laid. Spools and reserve are worked out for the whole plan.`
}

function Hurts({ store, circuit }: { store: Store; circuit: Circuit }) {
  const plan = store.plan.value
  const concerns = new Set<string>([circuit.id, ...circuit.lines, ...stationsOfCircuit(plan, circuit), ''])
  const cautions = store.report.value.cautions.filter((caution) => concerns.has(caution.where))
  return (
    <Question ask="What could hurt someone?">
      <CautionList store={store} cautions={cautions} />
    </Question>
  )
}
