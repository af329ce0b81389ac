import type { HowToCall } from '../budget/calling'
import type { End, EnduranceRow } from '../budget/endurance'
import type { LeftOffHook } from '../budget/left-lying'
import type { VoiceRow } from '../budget/rows'
import { judge } from '../budget/verdict'
import type { WorstPart } from '../budget/worst-parts'
import type { Outlook, ReachAlong } from '../report/outlook'
import type { Reach, ReportCircuit } from '../report/report'
import { checkWords } from './check-words'
import type { Tongue } from './tongue'
import { formatCount, formatDb, formatList, formatVolts, plainNumber } from './units'

/** How one calls on a circuit, in one sentence that a person can act on. */
export function callingSentence(calling: HowToCall, { name }: Tongue): string {
  switch (calling.how) {
    case 'agree':
      return 'Agree on times to lift: nothing rings.'
    case 'crank': {
      const { bells, without } = calling
      const ring =
        bells === 1 ? 'the other rings' : bells === 2 ? 'both others ring' : `all ${bells} others ring`
      if (without.length === 0) return `Crank; ${ring}.`
      return `Crank; ${ring}. ${formatList(without.map(name))} cannot crank, and must be called.`
    }
    case 'lift':
      return calling.sides > 2
        ? 'Lift; every other side of the unit rings.'
        : 'Lift; the other side of the unit rings.'
    case 'ring-from':
      return `Ring from ${name(calling.station)}; every bell rings.`
    case 'board': {
      const put = `Crank; ${name(calling.station)} answers and puts you through.`
      if (calling.without.length === 0) return put
      return `${put} ${formatList(calling.without.map(name))} cannot crank, and must be called.`
    }
    case 'exchange':
      return 'Lift and dial; the exchange rings whom you want.'
    case 'lamp':
      return `Lift and wait: the lamp at ${name(calling.station)} lights when another lifts.`
    case 'none':
      return 'Nobody can call: there is no bell, no lamp, or nobody to hear it.'
  }
}

/** `the supply`, `the set at Hut`. */
export const batteryWords = ({ set }: Pick<EnduranceRow, 'set'>, { name }: Tongue): string =>
  set === null ? 'supply' : `set at ${name(set)}`

/** What ends a battery's service: `the current at Hut fails`. */
export function endWords(until: End, { name }: Tongue): string {
  switch (until.code) {
    case 'check':
      return `${checkWords(until.check, name)} fails`
    case 'spent':
      return 'the battery is spent'
    case 'keeps':
      return 'nothing is drawn from it'
    case 'unknown':
      return `unknown: ${LACKING[until.lacks]}`
  }
}

const LACKING = {
  power: 'what the unit itself takes is not stated',
  feed: 'no battery behind the unit is stated',
  cells: 'the cells inside the set are not stated',
} as const

/** How long, in words that fit the length. */
function timeWords(days: number): string {
  if (days > 730) return `about ${Math.round(days / 365)} years by its drain; its own ageing ends it sooner`
  if (days >= 2) return `about ${Math.round(days)} days`
  return `about ${formatCount(Math.max(1, Math.round(days * 24)), 'hour')}`
}

/** `The supply: about 12 days, until the current at Hut fails at 11.4 V.` */
export function enduranceSentence(row: EnduranceRow, say: Tongue): string {
  const what = `The ${batteryWords(row, say)}`
  const why = endWords(row.until, say)
  if (row.until.code === 'unknown') return `${what}: ${why}.`
  if (row.days === null) return `${what}: as long as it keeps, for ${why}.`
  if (row.days === 0) return `${what}: not at all, since ${why}.`
  const at = row.atVolts === null ? '' : `, at ${formatVolts(row.atVolts)}`
  return `${what}: ${timeWords(row.days)}, until ${why}${at}.`
}

/** What one handset left lying does, for the worst of them. */
export function leftSentence(rows: readonly LeftOffHook[], { name }: Tongue): string {
  const rung = rows.filter(({ ringing }) => ringing !== null)
  if (rung.length === 0) return ''
  const failing = rung.filter(({ ok }) => !ok)
  if (failing.length === 0) return 'With one handset left off hook the other bells still ring.'
  const { left, ringing } = failing.reduce((a, b) =>
    b.ringing!.volts / b.ringing!.minVolts < a.ringing!.volts / a.ringing!.minVolts ? b : a,
  )
  const bell = `the bell at ${name(ringing!.to)} gets ${formatVolts(ringing!.volts)} and needs ${plainNumber(ringing!.minVolts)} V`
  const whose = failing.length === rung.length ? 'any one handset' : `the handset at ${name(left)}`
  return `With ${whose} left off hook: ${bell}${failing.length === rung.length ? `, when it is that at ${name(left)}` : ''}.`
}

/** Speech while everybody listens. */
export function crowdSentence(row: VoiceRow | null, { name }: Tongue): string {
  if (!row) return ''
  const loss = `${formatDb(row.lossDb)} of loss from ${name(row.from)} to ${name(row.to)}`
  const verdict = judge('voice', row)
  if (verdict === 'fails') return `With everybody listening nobody is understood: ${loss}.`
  return `With everybody listening it ${verdict === 'thin' ? 'barely talks' : 'still talks'}: ${loss}.`
}

/** Where speech is near its limit: what the higher pitches lose. */
export function pitchSentence(pitch: Outlook['pitch'], { name }: Tongue): string {
  if (!pitch) return ''
  const losses = pitch.losses.map(({ hz, lossDb }) => `${formatDb(lossDb)} at ${hz} Hz`)
  return `Near its limit speech gets dull: from ${name(pitch.from)} to ${name(pitch.to)} ${formatList(losses)} are lost.`
}

function partWords(part: WorstPart, wireTempC: number, { temp }: Tongue): string {
  switch (part) {
    case 'wet':
      return 'wet'
    case 'dry':
      return 'dry'
    case 'hot':
    case 'cold':
      return `at ${temp(wireTempC)}`
    case 'battery':
      return 'with the battery spent'
    case 'ringing':
      return 'with weak ringing'
  }
}

/** `fails wet, at 50 °C, with the battery spent: the current at Sheepfold`: what it takes, and what then fails; empty where it holds. */
export function worstSentence(
  because: Outlook['worstBecause'],
  worst: ReportCircuit['worst'],
  say: Tongue,
): string {
  if (!because?.check) return ''
  const parts = because.parts.map((part) => partWords(part, worst.wireTempC, say))
  return `fails ${parts.length === 0 ? 'as it is today' : parts.join(', ')}: ${checkWords(because.check, say.name)}`
}

/** `It would reach 33 km of this wire along this route (19 km in the worst weather), then the bell at B fails.` */
export function reachAlongSentence(
  { reach, worst }: { readonly reach: Reach; readonly worst: { readonly reach: Reach } },
  { reachAlong, worstReachAlong }: Pick<Outlook, 'reachAlong' | 'worstReachAlong'>,
  { run, name }: Tongue,
): string {
  if (!reachAlong || !reach.check) return 'The length of wire is not what limits it.'
  const what = checkWords(reach.check, name)
  if (reach.factor === 0) return `Nowhere: ${what} fails with no wire at all.`
  const far = ({ reachM }: ReachAlong) => run(Number(reachM.toPrecision(2)))
  const atWorst = !worstReachAlong
    ? ''
    : worst.reach.factor === 0
      ? ' (nowhere in the worst weather)'
      : ` (${far(worstReachAlong)} in the worst weather)`
  const verb = reach.factor < 1 ? 'It reaches only' : 'It would reach'
  return `${verb} ${far(reachAlong)} of this wire along this route${atWorst}, then ${what} fails. It is ${run(reachAlong.wireM)} from ${name(reachAlong.from)} to ${name(reachAlong.to)} now.`
}
