import type { HowToCall } from '../budget/calling'
import type { End, EnduranceRow } from '../budget/endurance'
import type { LeftOffHook } from '../budget/left-lying'
import type { VoiceRow } from '../budget/rows'
import { judge } from '../budget/verdict'
import type { Outlook } from '../report/outlook'
import type { QuotedNet } from '../report/quoted-reach'
import type { Reach } from '../report/report'
import { checkWords } from './check-words'
import type { Tongue } from './tongue'
import { formatCount, formatDb, formatList, formatVolts, plainNumber } from './units'
import { becauseWords, partWords } from './worst-words'

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

/** `The supply: about 12 days, until the current at Hut fails at 11.4 V.` Sets that last alike, or of which alike nothing is known, share a sentence. */
export function enduranceSentences(rows: readonly EnduranceRow[], say: Tongue): readonly string[] {
  const alike = new Map<string, EnduranceRow[]>()
  for (const row of rows) {
    const serves = serviceWords(row, say)
    const key = row.set === null ? `supply ${serves}` : serves
    alike.set(key, [...(alike.get(key) ?? []), row])
  }
  return [...alike.values()].map((group) => {
    const [first] = group
    const sets = group.flatMap(({ set }) => (set === null ? [] : [say.name(set)]))
    const who = sets.length > 1 ? `The sets at ${formatList(sets, 6)}` : `The ${batteryWords(first!, say)}`
    return `${who}: ${serviceWords(first!, say)}.`
  })
}

function serviceWords({ until, days, atVolts }: EnduranceRow, say: Tongue): string {
  const why = endWords(until, say)
  if (until.code === 'unknown') return why
  if (days === null) return `as long as it keeps, for ${why}`
  if (days === 0) return `not at all, since ${why}`
  const at = atVolts === null ? '' : `, at ${formatVolts(atVolts)}`
  return `${timeWords(days)}, until ${why}${at}`
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
  const bell = `the bell at ${name(ringing!.to)}`
  const volts = `${formatVolts(ringing!.volts)} and needs ${plainNumber(ringing!.minVolts)} V`
  if (failing.length === rung.length)
    return `With any one handset left off hook some bell stays silent. The worst is that at ${name(left)}: ${bell} then gets ${volts}.`
  return `With the handset at ${name(left)} left off hook ${bell} stays silent: it gets ${volts}.`
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

/** `fails wet, at 50 °C, with the battery spent: the current at Sheepfold`; empty where it works. */
export const worstSentence = (
  because: Outlook['worstBecause'],
  worst: { readonly wireTempC: number },
  say: Tongue,
): string => (because ? `${because.verdict} ${becauseWords(because, worst, say)}` : '')

/** A part that shortens the reach by less than this is not told. */
const TOLD = 0.98

/** How far each part of the worst weather alone would let it reach, for those that shorten it: `Wet: 22 km, then the bell at B fails.` */
export function aloneSentences(
  { worstAlone, reachAlong }: Pick<Outlook, 'worstAlone' | 'reachAlong'>,
  say: Tongue,
): readonly string[] {
  const todayM = reachAlong?.reachM ?? Number.POSITIVE_INFINITY
  return worstAlone.flatMap(({ part, wireTempC, reach, along }) => {
    if (!reach.check || !(along && along.reachM < TOLD * todayM)) return []
    const lead = capital(partWords(part, wireTempC, say))
    const what = checkWords(reach.check, say.name)
    if (reach.factor === 0) return [`${lead}: nowhere, ${what} fails with no wire at all.`]
    return [`${lead}: ${say.roughly(along.reachM)}, then ${what} fails.`]
  })
}

const QUOTED: Readonly<Record<QuotedNet, string>> = {
  crank: 'between crank sets',
  lift: 'with a ringdown unit',
  series: 'with two 9 V batteries in one leg',
}

/** Why the reach is longer than what people quote; empty where it is not. */
export function quotedSentence({ quoted }: Pick<Outlook, 'quoted'>, { roughly }: Tongue): string {
  if (!quoted) return ''
  const { net, quotedM, wornAlong } = quoted
  const worn = wornAlong
    ? `: if all of it were, this circuit would reach ${roughly(wornAlong.reachM)} in the worst weather`
    : ''
  return `People quote less, about ${roughly(quotedM)} ${QUOTED[net]}. They speak of wire that is old and nicked${worn}. Poor splices, noise and tired ears take more; this counts wire, sets and batteries as their entries have them.`
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** `It would reach 33 km of this wire along this route (19 km in the worst weather), then the bell at B fails.` */
export function reachAlongSentence(
  { reach, worst }: { readonly reach: Reach; readonly worst: { readonly reach: Reach } },
  { reachAlong, worstReachAlong }: Pick<Outlook, 'reachAlong' | 'worstReachAlong'>,
  { roughly, run, name }: Tongue,
): string {
  if (!reachAlong || !reach.check) {
    if (!worstReachAlong || !worst.reach.check) return 'The length of wire is not what limits it.'
    const what = checkWords(worst.reach.check, name)
    if (worst.reach.factor === 0)
      return `In the worst weather it reaches nowhere: ${what} fails with no wire at all.`
    return `The length of wire is not what limits it today; in the worst weather it would reach ${roughly(worstReachAlong.reachM)} of this wire along this route, then ${what} fails.`
  }
  const what = checkWords(reach.check, name)
  if (reach.factor === 0) return `Nowhere: ${what} fails with no wire at all.`
  const atWorst = !worstReachAlong
    ? ''
    : worst.reach.factor === 0
      ? ' (nowhere in the worst weather)'
      : ` (${roughly(worstReachAlong.reachM)} in the worst weather)`
  const verb = reach.factor < 1 ? 'It reaches only' : 'It would reach'
  return `${verb} ${roughly(reachAlong.reachM)} of this wire along this route${atWorst}, then ${what} fails. It is ${run(reachAlong.wireM)} from ${name(reachAlong.from)} to ${name(reachAlong.to)} now.`
}
