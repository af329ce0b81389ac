import { lineTags } from '../measure/line-tags'
import type { MeasuredLine } from '../measure/measured'
import { type PlaceOnLine, pointAtWireM } from '../measure/place-on-line'
import type { LineId } from '../plan/id'
import { type Line, lineNumber, type Plan } from '../plan/plan'
import { type FaultAnswer, type FaultQuestion, type Refusal, UNSURE_C } from '../report/find-fault'
import { tagReason } from './tag-words'
import type { Tongue } from './tongue'
import { formatOhms, unitOf } from './units'

type Measured = ReadonlyMap<LineId, MeasuredLine>

/** Where on the ground a fault that was found lies; null where none was. */
export function faultOnGround(plan: Plan, measured: Measured, answer: FaultAnswer): PlaceOnLine | null {
  if (answer.kind !== 'place') return null
  return pointAtWireM(plan, measured.get(answer.line)!, plan.lines.get(answer.line)!, answer.wireM)
}

const REFUSED: Readonly<Record<Refusal, string>> = {
  'no-way': 'Choose another station to read towards.',
  'bridge-by-earth': 'A bridge needs a good wire back, and a line on this way returns by earth.',
  'before-meter': 'By these readings the fault lies before the meter: check them.',
}

/** The answer in sentences: `About 1240 m of wire from Camp, on Camp – Ford: 380 m past bend 2.` */
export function faultSentence(
  plan: Plan,
  measured: Measured,
  question: FaultQuestion,
  answer: FaultAnswer,
  say: Tongue,
): string {
  if (answer.kind === 'refused') return REFUSED[answer.why]
  if (answer.kind === 'beyond') return beyondSentence(say.name(question.to), question, answer)
  const line = plan.lines.get(answer.line)!
  const landmark = pastWords(plan, line, measured.get(line.id)!, answer, say)
  return `About ${roundLength(answer.totalM, say)} of wire from ${say.name(question.from)}, on ${say.name(line.id)}: ${landmark}.`
}

/** How sure the place is: `Between 1190 m and 1300 m of wire if it is 10 °C warmer or colder than the plan has it.` */
export function spreadSentence(answer: FaultAnswer, say: Tongue): string {
  if (answer.kind !== 'place') return ''
  const [least, most] = [answer.leastM, answer.mostM].map((m) => roundLength(m, say))
  if (least === most) return 'The temperature of the wire does not matter to this reading.'
  return `Between ${least} and ${most} of wire if it is ${say.tempStep(UNSURE_C)} warmer or colder than the plan has it.`
}

/** Between which two tags of its line the fault lies, in the order in which one comes to them; empty where none was found. */
export function tagsSentence(plan: Plan, measured: Measured, answer: FaultAnswer, say: Tongue): string {
  if (answer.kind !== 'place') return ''
  const line = plan.lines.get(answer.line)!
  const tags = lineTags(plan, measured.get(line.id)!, line)
  const next = tags.findIndex(({ wireM }) => wireM > answer.wireM)
  const after = next === -1 ? tags.length - 1 : Math.max(1, next)
  const pair = [tags[after - 1]!, tags[after]!].map(
    ({ number, reasons }) => `${lineNumber(plan, line.id)}/${number} (${tagReason(reasons[0], say)})`,
  )
  return `It lies between tags ${(answer.forward ? pair : pair.toReversed()).join(' and ')}.`
}

function beyondSentence(
  to: string,
  { reading }: FaultQuestion,
  { whole }: Extract<FaultAnswer, { kind: 'beyond' }>,
): string {
  if (reading.kind === 'open' || reading.kind === 'open-both-ends')
    return `That is more than the whole way to ${to} has, ${(whole.farad * 1e9).toFixed(0)} nF: the break lies beyond, or a bell or a branch is still on the line.`
  return `That is more than the whole way to ${to} has, ${formatOhms(whole.loopOhm)}: the fault lies beyond, or it has ohms of its own.`
}

/** How far past the last bend, or the station, that one passes on the way from the meter; along the ground. */
function pastWords(
  plan: Plan,
  line: Line,
  measured: MeasuredLine,
  { wireM, forward }: Extract<FaultAnswer, { kind: 'place' }>,
  say: Tongue,
): string {
  const { legIndex, groundM } = pointAtWireM(plan, measured, line, wireM)
  const legStartM = measured.legs.slice(0, legIndex).reduce((sum, leg) => sum + leg.groundM, 0)
  const pastM = forward ? groundM - legStartM : legStartM + measured.legs[legIndex]!.groundM - groundM
  const bend = forward ? legIndex : legIndex + 1
  const landmark =
    bend === 0 || bend === measured.legs.length ? say.name(forward ? line.from : line.to) : `bend ${bend}`
  const past = roundLength(pastM, say)
  return past.startsWith('0 ') ? `at ${landmark}` : `${past} past ${landmark}`
}

/** To the whole unit up to 100, above it to tens: no meter tells more. */
function roundLength(lengthM: number, { system, length }: Tongue): string {
  const perUnitM = 1 / unitOf('lengthM', system).fromSi(1)
  const step = perUnitM * (lengthM / perUnitM < 100 ? 1 : 10)
  return length(Math.round(lengthM / step) * step)
}
