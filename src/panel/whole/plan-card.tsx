import { isUnfinished } from '../../budget/circuit-notes'
import type { Verdict } from '../../budget/rows'
import { undirected } from '../../isolated'
import { stationName } from '../../plan/plan'
import type { ReportCircuit } from '../../report/report'
import type { Store } from '../../state/store'
import { checkWords } from '../../words/check-words'
import { lackSentence } from '../../words/circuit-notes'
import { nameIn, tongueOf } from '../../words/tongue'
import { formatCount } from '../../words/units'
import { becauseWords } from '../../words/worst-words'
import { loadWhenShown } from '../load-when-shown'
import { VerdictMark } from '../verdict-mark'

const UnjoinedStations = loadWhenShown(async () => (await import('../ground/net-questions')).UnjoinedStations)
const PlanQuestions = loadWhenShown(async () => (await import('./plan-questions')).PlanQuestions)

/** The whole plan: what works, and below it what else is asked of it. */
export function PlanCard({ store }: { store: Store }) {
  const plan = store.plan.value
  const { circuits } = store.report.value
  return (
    <>
      <h1>
        <bdi>{undirected(plan.title) || 'Plan without a title'}</bdi>
      </h1>
      <p>{standingSentence(circuits)}</p>
      {stepsAreWanted(store) && <FirstSteps store={store} />}
      {circuits.length > 0 && (
        <ul class="circuits">
          {circuits.map((circuit) => (
            <CircuitRow key={circuit.id} store={store} circuit={circuit} />
          ))}
        </ul>
      )}
      <UnjoinedStations store={store} />
      <PlanQuestions store={store} />
    </>
  )
}

const FirstSteps = loadWhenShown(async () => (await import('./first-steps')).FirstSteps)

/** Until a first circuit is complete, or the steps are put away. */
const stepsAreWanted = ({ firstSteps, report }: Store): boolean =>
  firstSteps.value === 'shown' && !report.value.circuits.some(({ missing }) => missing.length === 0)

function CircuitRow({ store, circuit }: { store: Store; circuit: ReportCircuit }) {
  const unfinished = isUnfinished(circuit.missing)
  return (
    <li>
      <button
        type="button"
        onClick={() => {
          store.selection.value = { kind: 'circuit', id: circuit.id }
        }}
      >
        <span class="name">{nameIn(store.plan.value, circuit.id)}</span>
        <VerdictMark verdict={circuit.verdict} unfinished={unfinished} />
        <span class="soft">{reason(store, circuit)}</span>
        {!unfinished && <VerdictMark verdict={circuit.worst.verdict} />}
        {!unfinished && <span class="soft">{worstReason(store, circuit)}</span>}
      </button>
    </li>
  )
}

/** Why a circuit stands today as it does, in a few words. */
function reason(store: Store, { verdict, missing, reach }: ReportCircuit): string {
  if (missing[0]) return lackSentence(missing[0], tongueOf(store.plan.value, store.units.value))
  if (verdict === 'works' || !reach.check) return 'today'
  return `today: ${checkWords(reach.check, (id) => stationName(store.plan.value, id))}`
}

function worstReason(store: Store, { id, worst }: ReportCircuit): string {
  const because = store.worstBecause.value.get(id)
  if (because?.verdict === worst.verdict) return becauseWords(because, worst, store.tongue.value)
  if (worst.verdict === 'works' || !worst.check) return 'in the worst weather'
  return `in the worst weather: ${checkWords(worst.check, (station) => stationName(store.plan.value, station))}`
}

/** How the circuits stand, in a sentence. */
function standingSentence(circuits: readonly ReportCircuit[]): string {
  if (circuits.length === 0) return 'Nothing is wired yet.'
  const judged = circuits.filter(({ missing }) => !isUnfinished(missing))
  const count = (verdict: Verdict) => judged.filter((circuit) => circuit.verdict === verdict).length
  const [works, thin, fails] = [count('works'), count('thin'), count('fails')]
  const unfinished = circuits.length - judged.length
  if (circuits.length === 1 && works === 0)
    return `The circuit ${unfinished > 0 ? 'is not finished' : fails > 0 ? 'fails' : 'is thin'}.`
  if (works === circuits.length) return `${allWork(works)}${worstWords(circuits)}.`
  const parts = [
    ...(fails > 0 ? [`${fails} ${fails === 1 ? 'fails' : 'fail'}`] : []),
    ...(thin > 0 ? [`${thin} ${thin === 1 ? 'is' : 'are'} thin`] : []),
    ...(works > 0 ? [`${works} ${works === 1 ? 'works' : 'work'}`] : []),
    ...(unfinished > 0 ? [`${unfinished} ${unfinished === 1 ? 'is' : 'are'} not finished`] : []),
  ]
  return `Of ${formatCount(circuits.length, 'circuit')}: ${parts.join(', ')}.`
}

const allWork = (count: number) => (count === 1 ? 'The circuit works' : `All ${count} circuits work`)

function worstWords(circuits: readonly ReportCircuit[]): string {
  const failing = circuits.filter((circuit) => circuit.worst.verdict === 'fails').length
  if (failing === 0) return ''
  if (circuits.length === 1) return ' today, but fails in the worst weather'
  return ` today; ${failing} ${failing === 1 ? 'fails' : 'fail'} in the worst weather`
}
