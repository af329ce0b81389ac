import { pairEndsAt } from '../../plan/pair-ends'
import { type Circuit, circuitName, type Plan } from '../../plan/plan'
import type { Jack, Switchboard } from '../../report/switchboard'
import { BELL_WORDS, DROP_WORDS, ringsWords, whoIsOn } from '../../words/jack-words'
import { tongueOf } from '../../words/tongue'
import { type Cell, type Table, TICK_BOX } from '../layout/table'
import { lineNumber } from '../line-marks'
import type { PaperSource } from '../paper-source'

/** Which pair of which line comes in on a jack, and on which posts. */
function comesInOn(source: PaperSource, circuit: Circuit, board: Switchboard, jack: Jack): string {
  const { plan } = source
  const ends = pairEndsAt(plan, board.station as never).filter((end) => {
    const whose = circuit.over ? end.rider : end.circuit
    // A trunk that another board's circuit owns comes in on a pair of that circuit.
    return jack.lines.length > 0
      ? whose === circuit.id && jack.lines.includes(end.line)
      : jack.trunkTo !== null && end.circuit === jack.trunkTo
  })
  return ends
    .map(({ line, pair, posts }) => {
      const { pairs } = plan.lines.get(line)!
      return `line ${lineNumber(source, line)}${pairs > 1 ? `, pair ${pair}` : ''} (posts ${posts.join(', ')})`
    })
    .join('; ')
}

/** Jack by jack: the pair on it, who it is with the rings of a shared line, what its drop and its bell should do, and room to write. */
export function jackTable(source: PaperSource, circuit: Circuit, board: Switchboard): Table {
  const { plan, system } = source
  const say = tongueOf(plan, system)
  const isBoard = board.kind === 'board'
  const spare = Array.from({ length: board.spare ?? 0 }, (_, i): readonly Cell[] => [
    board.jacks.length + i + 1,
    '',
    'spare',
    ...(isBoard ? [''] : []),
    '',
    '',
  ])
  return {
    title: isBoard ? 'Jacks' : 'Ports',
    columns: [
      { head: isBoard ? 'Jack' : 'Port', share: 12 },
      { head: 'Comes in on', share: 48 },
      { head: 'Who it is', share: 60 },
      ...(isBoard ? [{ head: 'Its drop, when that set rings', share: 36 }] : []),
      { head: 'Its bell, when you ring', share: 36 },
      { head: 'Tried', share: 14 },
    ],
    rows: [
      ...board.jacks.map((jack): readonly Cell[] => [
        jack.number,
        comesInOn(source, circuit, board, jack),
        whoIsOn(jack, plan, say),
        ...(isBoard ? [ringsWords(jack.drop, DROP_WORDS)] : []),
        ringsWords(jack.bell, BELL_WORDS),
        TICK_BOX,
      ]),
      ...spare,
    ],
  }
}

/** What is tried and counted at a board: each jack by drop, bell and voice, and the calls of the day. */
export function trafficTable(plan: Plan, circuit: Circuit, board: Switchboard): Table {
  const isBoard = board.kind === 'board'
  const whole = `${board.callsAtOnce} at once`
  return {
    title: `${circuitName(plan, circuit)}: traffic`,
    isWrittenIn: true,
    columns: [
      { head: isBoard ? 'Jack' : 'Port', share: 14 },
      ...(isBoard ? [{ head: 'Drop falls', share: 16 }] : []),
      { head: 'Bell rings', share: 16 },
      { head: 'Tried with', share: 26 },
      { head: 'Heard (good, faint, not)', share: 34 },
      { head: 'Calls counted', share: 24 },
      { head: `Found busy (${whole})`, share: 30 },
    ],
    rows: board.jacks.map(({ number }) => [number, ...(isBoard ? [TICK_BOX] : []), TICK_BOX, '', '', '', '']),
  }
}
