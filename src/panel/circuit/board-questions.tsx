import './board.css'
import type { Signal } from '@preact/signals'
import type { VoiceRow } from '../../budget/rows'
import { judge } from '../../budget/verdict'
import type { Circuit } from '../../plan/plan'
import type { ReportCircuit } from '../../report/report'
import type { Switchboard } from '../../report/switchboard'
import { throughCalls } from '../../report/through-calls'
import type { Reckoned } from '../../state/circuit-prospect'
import type { Store } from '../../state/store'
import { voltsWords, whoIsOn } from '../../words/jack-words'
import {
  callsPerDaySentence,
  faintSentence,
  trafficSentence,
  trunkSentence,
} from '../../words/switchboard-words'
import { formatCount } from '../../words/units'
import { Question } from '../question'
import { VerdictMark } from '../verdict-mark'
import { ApplicableRemedies } from './remedies'

interface Props {
  readonly store: Store
  readonly circuit: Circuit
  readonly found: ReportCircuit
  readonly reckoned: Signal<Reckoned>
}

/** More telephones than these would make a table that no panel holds: the rest stand better. */
const MOST = 10

/** What a user of a board or an exchange asks: who is on which jack, which calls are faint, how many at once, how long the battery lasts. */
export function BoardQuestions({ store, circuit, found, reckoned }: Props) {
  const board = found.switchboard
  if (!board) return null
  const say = store.tongue.value
  const perDay = callsPerDaySentence(reckoned.value.prospect?.outlook.callsPerDay ?? [])
  const what = board.kind === 'board' ? 'jack' : 'port'
  return (
    <>
      <Question ask={`Who is on which ${what}?`}>
        <Jacks store={store} board={board} what={what} />
      </Question>
      <Question ask="Which calls through it are faint?">
        <p>{faintSentence(board, say)}</p>
        <CallTriangle store={store} board={board} found={found} />
        <FaintRemedies store={store} circuit={circuit} found={found} />
      </Question>
      <Question ask="How many calls at once?">
        <p>{trafficSentence(board, say)}</p>
        {perDay && <p>{perDay}</p>}
      </Question>
      <Trunks store={store} reckoned={reckoned} />
    </>
  )
}

function Jacks({ store, board, what }: { store: Store; board: Switchboard; what: string }) {
  const say = store.tongue.value
  const plan = store.plan.value
  const hasDrops = board.kind === 'board'
  const left =
    board.spare === null
      ? []
      : [board.spare === 0 ? `No ${what} is spare.` : `${formatCount(board.spare, what)} spare.`]
  const own = board.hasOperator ? ['The operator’s own telephone stands there, and talks to every line.'] : []
  return (
    <>
      <table class="jacks">
        <thead>
          <tr>
            <th scope="col">{what === 'jack' ? 'Jack' : 'Port'}</th>
            <th scope="col">Who</th>
            {hasDrops && <th scope="col">Drop falls</th>}
            <th scope="col">Bell rings</th>
          </tr>
        </thead>
        <tbody>
          {board.jacks.map((jack) => (
            <tr key={jack.number}>
              <th scope="row">{jack.number}</th>
              <td>{whoIsOn(jack, plan, say)}</td>
              {hasDrops && <Rings row={jack.drop} />}
              <Rings row={jack.bell} />
            </tr>
          ))}
        </tbody>
      </table>
      <p class="soft">{[...left, ...own].join(' ')}</p>
    </>
  )
}

function Rings({ row }: { row: Switchboard['jacks'][number]['drop'] }) {
  if (!row) return <td>–</td>
  return (
    <td>
      <VerdictMark verdict={judge('ringing', row)} bare /> {voltsWords(row)}
    </td>
  )
}

/** Every call between two lines by its loss, the faintest in the corner. */
function CallTriangle({ store, board, found }: { store: Store; board: Switchboard; found: ReportCircuit }) {
  const { telephones, calls } = throughCalls(board, found.voice)
  if (telephones.length < 2) return null
  const { name } = store.tongue.value
  const shown = telephones.slice(0, MOST)
  const atWorst = throughCalls(board, found.worst.voice).calls.flat()
  const faintAtWorst = atWorst.filter((row) => row && judge('voice', row) !== 'works').length
  return (
    <>
      <p class="soft">Loss in dB from one to the other, the faintest first:</p>
      <div class="triangle-frame">
        <table class="triangle" aria-label="Loss of every call through it">
          <thead>
            <tr>
              <td />
              {shown.slice(0, -1).map(({ station, label }) => (
                <th key={station} scope="col" title={name(station)}>
                  {label}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {shown.slice(1).map(({ station, label }, i) => (
              <tr key={station}>
                <th scope="row">
                  <b>{label}</b> {name(station)}
                </th>
                {calls[i]!.map((row, k) => (
                  <Loss key={shown[k]!.station} row={row} />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p class="soft">
        {shown[0]!.label} is {name(shown[0]!.station)}.
        {telephones.length > MOST && ` ${telephones.length - MOST} more telephones stand better.`}{' '}
        {faintAtWorst > 0
          ? `In the worst weather ${formatCount(faintAtWorst, 'call')} through it ${faintAtWorst === 1 ? 'is' : 'are'} faint.`
          : 'In the worst weather none is faint.'}
      </p>
    </>
  )
}

function Loss({ row }: { row: VoiceRow | null }) {
  if (!row) return <td class="soft">–</td>
  const verdict = judge('voice', row)
  return (
    <td class={verdict}>
      {verdict !== 'works' && <VerdictMark verdict={verdict} bare />}
      {row.lossDb.toFixed(row.lossDb < 10 ? 1 : 0)}
    </td>
  )
}

/** What would mend just the faint calls; each was tried with the engine. */
function FaintRemedies({ store, circuit, found }: Omit<Props, 'reckoned'>) {
  if (!found.switchboard?.faint.length) return null
  const remedies = store.faintRemedies.value.get(circuit.id)
  if (!remedies)
    return store.remedyFailure.value ? null : <p class="soft">What would mend them is being sought.</p>
  if (remedies.length === 0)
    return <p>Nothing that was tried mends all of them without harm to other calls.</p>
  return (
    <>
      <h3>What would mend just these</h3>
      <div class="faint-remedies">
        <ApplicableRemedies store={store} circuit={circuit} found={found} remedies={remedies} />
      </div>
    </>
  )
}

function Trunks({ store, reckoned }: Pick<Props, 'store' | 'reckoned'>) {
  const trunks = reckoned.value.prospect?.trunks ?? []
  if (trunks.length === 0) return null
  return (
    <Question ask="What do the trunks do?">
      {trunks.map((trunk) => (
        <p key={trunk.circuits.join()}>
          <VerdictMark verdict={trunk.verdict} />. {trunkSentence(trunk, store.tongue.value)}
        </p>
      ))}
    </Question>
  )
}
